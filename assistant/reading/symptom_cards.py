"""Symptoms of a tank: what it does, in customers' words."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_SEAL = (
    r"(?:flapper|flap|seal|rubber(?: (?:thing|part|piece|thingy|ball|seal))?|stopper"
    r"|plug|ball|bulb|disc|disk|gasket|canister|it|thing(?:y)?)"
)
_NOT = (
    r"(?:not|(?:wo|do|does|did|is|are|was|ca|has|have|could|would)n't|never|no longer"
    r"|cannot|wont|doesnt|dont|isnt|cant)"
)
_KEEPS = (
    r"(?:keeps?(?: on)?|won't stop|wont stop|will not stop|doesn't stop|never stops"
    r"|always|constantly|continuously|continually|just|doesn't quit|won't quit|still"
    r"|is)"
)
_TIMES = (
    r"(?:every (?:\d+|few|couple|so often|hour|half|ten|five|twenty|thirty|fifteen"
    r"|night|now|minute|once)|at night|in the middle of the night|all by itself"
    r"|by itself|on its own|by its own|randomly|at random|for no reason|when (?:no one"
    r"|nobody)|without (?:anyone|being|me|us|flushing)|overnight|periodically"
    r"|now and then|off and on|on and off|once in a while|intermittently|hours? later)"
)
_REFILL = (
    r"(?:refill\w*|re-fill\w*|fill\w*(?: up| itself)?|top\w* (?:up|off)|run(?:s|ning)?"
    r"|com(?:es|ing) on|turns? on|kicks? (?:on|in)|flush(?:es|ing)?(?: itself)?"
    r"|cycl\w+|starts?(?: up| running| filling)?|goes off)"
)

_RUNNING = (
    card(
        "symptom",
        "refills by itself",
        rf"\b{_REFILL}<4>{_TIMES}\b|\b{_TIMES}<3>(?:it |the (?:tank|toilet) )?{_REFILL}\b"
        r"|\b(?:ghost|phantom)[- ]?(?:flush\w*|fill\w*|refill\w*)\b|\b(?:self"
        r"|auto)[- ]?(?:flush\w*|fill\w*|refill\w*)\b|\b(?:flush\w*|refills"
        r"|fills) (?:itself|on its own|by itself)\b|\brandom(?:ly)? (?:runs|fills|refills"
        r"|flushes|flushing)\b|\bhear<5>(?:refill\w*|fill(?:s|ing)?|com(?:e|es|ing) on"
        r"|kick\w*)\b",
        "water is lost past the seal",
    ),
    card(
        "symptom",
        "water over the overflow",
        r"\b(?:over|down|into|in|up to|rim of|top of)<4>(?:stand ?pipe|riser|upright (?:pipe|tube)"
        r"|(?:pipe|tube) (?:in|at) the (?:middle|cent(?:er|re)))\b"
        r"|\b(?:cent(?:er|re)|middle|upright|overflow) (?:pipe|tube)<2>(?:pours|runs|flows"
        r"|trickles)<1>into it\b"
        r"|\blevel<4>(?:top of|up to|above|rim of)<4>over ?flow\b|\b(?:water|running|runs|flow\w*"
        r"|going|goes|spill\w*|pour\w*|(?:trickl|dribbl)\w+|level)<4>(?:over|into|down"
        r"|above|inside|through)<2>over ?flow(?: ?(?:tube|pipe))?\b|\b(?:over ?flow(?:s"
        r"|ing)?)<1>(?:tube|pipe)<1>(?:running|overflowing)\b"
        r"|\b(?:water (?:level )?(?:is )?|tank )(?:fills? )?too high\b|\b(?:runs?|running|drains?"
        r"|going|goes|flow\w*|spill\w*|pour\w*|trickl\w+)<2>(?:down|into|in|over)<2>(?:tube|pipe)"
        r"<1>(?:in|at) (?:the )?(?:middle|cent(?:er|re))\b|\b(?:over"
        r"|above) the (?:top of the )?(?:overflow|stand ?pipe)\b"
        r"|\b(?:higher|above|over) (?:than )?(?:the )?(?:top|rim|brim|lip) of the (?:over ?flow"
        r"|stand ?pipe|tube)\b",
        "the fill valve does not shut",
        unless=r"\b(?:ring|collar|slips|slides|fits)\b|\bbelow\b|\b(?:nowhere|anywhere|not) near\b",
    ),
    card(
        "symptom",
        "leak at the seal",
        r"\b(?:leak\w*|seep\w*|(?:trickl|dribbl)\w+|drip\w*|pass\w*|getting|water going"
        rf"|bleed\w*)<3>(?:past|by|around|through|under|at|from)<2>{_SEAL}\b|\b(?:leak\w*"
        r"|(?:trickl|dribbl)\w+|drip\w*|seep\w*|ripples?|rippling|run\w*"
        r"|stream\w*)<3>(?:into|in|inside|down)<4>(?:bowl|pan)\b|\b(?:flapper|seal|stopper"
        r"|gasket|flush valve|canister|tank ball)(?: is| was| has| keeps| still| always"
        rf"| started| has been){{0,2}}<1>(?:leak\w*|drip\w*)\b|\b(?:leaky|leaking"
        r"|dripping)<1>(?:flapper|seal|stopper|gasket|flush valve|canister)\b|\b(?:dye"
        r"|food colou?ring|coloring|colou?r)<8>(?:bowl|in there|through|showed|came)\b"
        r"|\binternal leak\b|\bslow leak\b",
        "water passes the seal",
    ),
    card(
        "symptom",
        "runs on",
        rf"\b(?:both|they both|toilets)(?: of them)? run\b|\b{_KEEPS}<1>(?:runs?|run+ing"
        r"|run on|(?:trickl|dribbl)\w+|filling|going)\b|\b(?:runs?|running|(?:trickl"
        r"|dribbl)\w+|flows?)<2>(?:all the time|constantly|continuously|non-?stop|forever"
        r"|on and on|continually|all (?:day|night)|24/7|on after|after (?:it'?s? |i |you "
        r"|we |every |a |each |the )*flush\w*|endlessly|without stopping|and (?:won't"
        r"|doesn't|never) stops?)\b|\b(?:toilet|tank|it|water|cistern)(?: just| still"
        r"| also| has)?(?: been)? (?:runs|running|trickles)\b|\brunning (?:toilet|water"
        r"|tank)\b|\bwater (?:won't|doesn't|wont|does not|never) (?:stop|shut off"
        rf"|turn off)\b|\b{_NOT} (?:stop|quit) (?:run+ing|filling|trickling)\b|\brun(?:s"
        r"|ning)? on\b|\bdoesn't shut off\b|\b(?:toilet|it|tank|water)(?: does| is"
        rf"| did)? ?{_NOT} (?P<it>run(?:s|ning)?)\b",
        "water goes on running",
        unless=r"\b(?:run(?:s|ning)? (?:out of|a|into|an|your|errands)|runs a shop"
        r"|in the long run)\b",
    ),
    card(
        "symptom",
        "tank level drops",
        r"\b(?:water|tank|level)(?: in the tank| level)?<2>(?:drops|dropping|goes down"
        r"|going down|falls|empties|drains|draining|empty|lowers|drained|dropped"
        r"|emptied)\b|\b(?:los(?:es|ing))<1>water\b|\btank<2>(?:empty|low)<3>(?:morning"
        r"|overnight|night|hours?)\b|\bwater bill\b",
        "water is lost past the seal",
        unless=r"\bbefore<3>empty\b|\b(?:drops|goes down) (?:when|as) (?:i|you|we) flush\b",
    ),
    card(
        "symptom",
        "slow fill",
        r"\b(?:fills?|refills?|filling|to (?:re)?fill)(?: up| back"
        r"| the tank)*<2>(?:slow\w*|forever|(?:a )?long time|ages)\b|\b(?:slow\w*|forever"
        r"|ages|long time|minutes)<2>(?:to )?(?:re)?fill\w*\b"
        rf"|\b{_NOT} fill (?:up )?(?:fast|quick\w*)\b"
        r"|\bta(?:kes?|kse|king)<4>(?:minutes?|minuets?|mins?|hours?|hrs?|ages"
        r"|forever)<3>(?:re)?fill?\b"
        r"|\bfill?s?(?:ing)?(?: up)? (?:super|very|so|really|too) slow\w*\b",
        "the fill valve",
    ),
    card(
        "symptom",
        "will not fill",
        r"\b(?:tank |it |toilet |cistern |water )?(?:does |do |will |won't |wo|does|would"
        rf"|has |is )?{_NOT}<1>(?:re-?)?fill(?:ing)?\b(?! (?:up )?(?:fast|quick))"
        r"|\bno water<2>(?:tank|cistern)\b|\btank stays (?:dry|empty)\b",
        "the fill valve or the supply",
    ),
    card(
        "symptom",
        "hissing",
        r"\bhiss\w*\b|\bsizzl\w+\b|\bwhin(?:e|es|ing)\b|\bwhistl\w+\b",
        "the fill valve lets a little by",
    ),
    card(
        "symptom",
        "noise",
        r"\b(?:bang\w*|knock\w*|hammer\w*|vibrat\w+|groan\w*|moan\w*|screech\w*|squeal\w*"
        r"|fog ?horn)\b",
        "a valve or a pipe that chatters",
        unless=r"\bknock\w* (?:off|loose|over|it)\b|\bbang for\b|\bbang on\b",
    ),
)

_FLUSHING = (
    card(
        "symptom",
        "must hold the handle",
        r"\b(?:hold\w*|held|keep\w*)(?: ?down)?<3>(?:handle|handel|lever|button|it down"
        r"|knob|trip lever)\b(?! (?:in|with) )|\bhandle<2>(?:held|hold) ?(?:down)?\b"
        r"|\bhold(?:ing)? it down\b",
        "the seal falls back too soon",
        unless=r"\b(?:hold\w* (?:the )?(?:handle|lever|button) (?:on|in place|to the)|nut"
        r"|screw)\b",
    ),
    card(
        "symptom",
        "must jiggle the handle",
        r"\b(?:ji[gn]gl\w+|wiggl\w+|juggl\w+|fiddl\w+|joggl\w+|play with)<3>(?:handle"
        r"|handel|lever|it|chain|button|knob)\b",
        "chain, lever or seal hangs up",
    ),
    card(
        "symptom",
        "closes too soon",
        rf"\b{_SEAL}(?: (?:will|does|would|is|do))? ?{_NOT}<1>(?:stay|hold|remain)(?:ing"
        r"|s)? (?:up|open|off)\b|\b(?:won't|doesn't|wont|not|n't) stay (?:up|open)\b"
        r"|\b(?:closes?|closing|shuts?|shutting|drops?|falls?|slams?|comes? down|sinks?"
        r"|snaps?)(?: shut| down| closed| back)*<1>(?:too (?:soon|fast|quick\w*|early)"
        r"|right away|immediately|before|so fast|instantly|straight away|prematurely)\b",
        "too little buoyancy, or a chain too short",
    ),
    card(
        "symptom",
        "stuck open",
        rf"\b{_SEAL}(?: is| gets| was| keeps| stays)*<1>(?:stuck|stays|sticks|sticking"
        rf"|hangs|hung|caught)<1>(?:open|up)\b|\b{_SEAL}<1>(?:{_NOT}|fails to|won't|doesn't"
        r"|wont) (?:close|drop|fall|go (?:back )?down|come (?:back )?down|shut)\b"
        r"|\bstays (?:up|open)\b|\bstuck (?:open|up)\b",
        "chain too short, or something in its way",
    ),
    card(
        "symptom",
        "double flush",
        r"\bdouble flush(?:es|ing)?\b(?! (?:toilet|tank|model|system|valve))|\bflush(?:es"
        r"|ed|ing)? (?:it )?(?:twice|two times|2 times)\b(?! (?:to|before|for|or))",
        "the seal stays up too long",
        unless=r"\bhave to\b|\bneed to\b|\bmust\b|\bgotta\b|\btakes? two\b",
    ),
    card(
        "symptom",
        "weak flush",
        r"\buses (?:only )?half\b|\b(?:weak|poor|lazy|half|slow|partial|incomplete|bad"
        r"|lousy|feeble|pathetic|sluggish|terrible|crappy)(?:est|er)?<1>flush\w*\b"
        r"|\bflush\w*<2>(?:weak\w*|poor\w*|slow\w*|incomplete\w*|half ?way|partial\w*"
        rf"|bad(?:ly)?|sluggish\w*|lousy|terribl[ey])\b|\b(?:{_NOT}) (?:flush|empty"
        r"|clear) (?:all the way|complete\w*|proper\w*|well|fully|right|everything|good"
        r"|strong\w*|very well|the bowl)\b|\b(?:have to|need to|must|gotta"
        r"|takes) flush(?:es)? (?:it )?(?:twice|two|2|several|multiple|a couple|three"
        r"|again)\b|\btakes two flushes\b|\b(?:only|just)(?: like)? (?:half"
        r"|partial\w*)<2>(?:flush\w*|empt\w*|water|tank)\b|\bnot (?:enough|much) (?:water"
        r"|power|force)\b",
        "too little water leaves the tank",
        unless=r"\bhalf flush (?:button|and|or|/)\b|\bfull flush\b|\bdual flush\b",
    ),
    card(
        "symptom",
        "will not flush",
        r"\b(?:toilet|it|handle|lever|button)(?: just| even| will"
        rf"| does)* ?{_NOT}<1>(?:flush|work|do anything|lift)\b(?! (?:all the way|complete"
        r"|proper|well|fully|right|everything|good|strong))|\b(?:won't|wont|doesn't"
        r"|does not|will not|can't) flush\b(?! (?:all|comp|prop|well|full|right|every|good"
        r"|strong))|\b(?:handle|lever|button)(?: does)? ?(?:does|goes)? nothing\b"
        r"|\bnothing happens\b|\bstopped flushing\b",
        "chain or handle",
    ),
    card(
        "symptom",
        "handle broken",
        r"\b(?:handle|lever|trip lever|button)(?: is| has| was| gets| got| just"
        r"| are)*<1>(?:broke\w*|snapped|loose|floppy|stuck|came off|fell off|sticks|limp"
        r"|cracked|bent|jammed)\b|\b(?:broke\w*|loose|stuck|snapped|floppy)<2>(?:handle"
        r"|lever|button)\b|\b(?:handle|lever)\b[^.?!]{0,60}\bstays? (?:down|up)\b|\b(?:handle"
        r"|lever|button)<5>(?:flop\w*|goes limp|went limp)\b"
        r"|\bnothing happens when<1>(?:i|we|you)<1>(?:press|push|pull|flush)\b",
        "the lever",
    ),
    card(
        "symptom",
        "blocked",
        r"\b(?:water|it|bowl|level)<2>(?:comes?|coming|rises?|rising|goes|fills|backs) up<4>"
        r"(?:bowl|pan|brim|rim)\b|\bclog(?:s|ged|ging)?\b|\bblock(?:ed|ages?)\b|\bbacked up\b"
        r"|\bplugged up\b"
        r"|\bplung(?:ed|ing)\b|\b(?:a|the|with|used?) plunger\b(?! (?:ball|washer|seal|rubber"
        r"|gasket|ring)s?\b)"
        r"|\bbowl<2>(?:drains slow\w*|fills up)\b"
        r"|\b(?:bowl|water)<4>(?:comes?|came|coming|goes|rises?|rising|rose)<6>(?:brim|rim"
        r"|top of the bowl)\b|\bgurgl\w+\b",
        "the bowl or the drain",
    ),
)

_PART = (
    card(
        "symptom",
        "cracked overflow tube",
        r"\bover ?flow(?: tube| pipe)?<1>(?:is |was |has a |looks )?(?:crack\w*|split"
        r"|broke\w*|snapped)\b|\b(?:cracked|split|broken)<1>over ?flow\b",
        "water runs out through the crack whatever the seal does",
    ),
    card(
        "symptom",
        "rough seat",
        r"\b(?:seat|valve seat|opening|rim)<6>(?:rough|corroded|pitted|nicked|worn|rust\w*"
        r"|crust\w*|lime\w*|calcium|mineral\w*|scratched|chipped|buildup|eaten|scale)\b"
        r"|\b(?:rough|corroded|pitted|rusty|crusty|worn)<1>(?:valve )?seat\b",
        "no seal closes on a rough seat",
        unless=r"\btoilet seat\b|\blid\b|\bbowl\b|\bhinge",
    ),
    card(
        "symptom",
        "chain caught",
        r"\bchain(?: is| gets| keeps| was)*<2>(?:caught|stuck|snag\w*|tangl\w+|kink\w*"
        r"|hung up|hooked|trapped|twist\w*|hangs up|jam\w*|under|catches|catching"
        r"|pinched)\b|\b(?:caught|snag\w*|tangl\w+|trapped)<3>chain\b",
        "the chain holds it open",
    ),
    card(
        "symptom",
        "chain too long",
        r"\bchain(?: is| was| seems| looks)*<1>(?:too long|loose|slack|too much slack)\b"
        r"|\bslack in the chain\b|\btoo much (?:slack|chain)\b|\blong chain\b",
        "it gets under the seal",
    ),
    card(
        "symptom",
        "chain too short",
        r"\bchain(?: is| was| seems| looks)*<1>(?:too (?:short|tight)|tight|very short)\b"
        r"|\bshort chain\b",
        "it holds the seal off",
    ),
    card(
        "symptom",
        "chain came off",
        r"\bchain(?: is| was| has| keeps| just| came| coming| comes| fell| falls| falling"
        r"| popped| pops)*<1>(?:off|broke\w*|disconnected|unhooked|undone|snapped|detached"
        r"|rusted|missing|unclipped)\b|\bbroken chain\b"
        r"|\bchain<2>(?:came|come|comes|fell|falls|popped|pops) off\b",
        "nothing lifts the seal",
    ),
    card(
        "symptom",
        "comes off the hinge",
        rf"\b{_SEAL}(?: keeps| just| always| has| is)*<1>(?:com(?:es|ing)|pop(?:s|ping"
        r"|ped)?|fall(?:s|ing)?|fell|slip(?:s|ping|ped)?|slid(?:es|ing)?|came|detach\w*"
        r"|jump\w*)<1>(?:off|loose)(?: of)?(?! the shelf)\b|\boff (?:of )?(?:the |its "
        r"|one |both )(?:hinges?|pegs?|pins?|ears?|posts?)\b|\b(?:ears?|pegs?|hinges?"
        r"|pins?|tabs?)(?: (?:has|have|is|are|was|were|on (?:it|one side"
        r"|the flapper)))*<1>(?:broke\w*|snapped|torn|ripped|tore|split|cracked|came off"
        r"|gone)\b|\b(?:broke\w*|snapped|torn|ripped|split)(?: off)?<2>(?:ears?|pegs?"
        r"|hinges?|pins?)\b",
        "ears or pegs do not hold",
        unless=r"\b(?:seat|lid|door|handle|chain) (?:\w+ )?(?:com|pop|fall|fell|slip|hinge"
        r"|broke)\w*\b|\bchain\b",
    ),
    card(
        "symptom",
        "rubber perished",
        r"\b(?:flapper|flap|seal|rubber(?: \w+)?|stopper|gasket|ball|plug|disc"
        r"|it)(?: (?:is|are|was|looks?|feels?|has|got|gone|went|seems|just|all|totally"
        r"|completely|very|really|so|getting|gets|have|been|a bit|kind of|pretty|old and"
        r"|and|become|turned|turning)){0,4} (?:black and \w+|turned black|warped|wavy"
        r"|slim(?:y|e)|gooey|gummy|mushy|hard(?:ened)?(?! plastic)|brittle|soft|swollen"
        r"|curl\w*|distorted|deformed|cracked|perished|worn(?: out)?|shot|rotted|rotten"
        r"|deteriorat\w*|crumbl\w*|disintegrat\w*|falling apart|melt\w*|sticky|bubbl\w*"
        r"|blister\w*|misshapen|water ?logged|stiff|torn|chewed|eaten|bad|crud\w*"
        r"|dry rot\w*|degraded|decayed)\b|\b(?:warped|swollen|perished|worn(?:[- ]out)?"
        r"|rotted|rotten|brittle|cracked|slimy|deteriorated|torn|disintegrating|hardened"
        r"|crumbling|mushy|gummy)<1>(?:flapper|flap|seal|rubber|stopper|gasket|plug|ball"
        r"|disc)\b|\b(?:black|rubber)<2>(?:gunk|goo|slime|residue|smear|on my (?:hands"
        r"|fingers)|all over my (?:hands|fingers)|comes off on)\b|\b(?:turn\w*|gets?|got"
        r"|left|leaves) (?:my )?(?:hands|fingers)<1>black\b|\b(?:turned|gone|went"
        r"|going) (?:all )?(?:black|soft|hard|stiff|brittle|slimy|to goo)\b",
        "chlorine and years spoil rubber",
        unless=r"\b(?:not bad|too bad|bad news)\b|\bseat is\b|\blid\b",
    ),
    card(
        "symptom",
        "does not seat",
        r"\b(?:flapper|flap|seal|rubber|stopper|gasket|ball|plug|disc|new one|it|canister"
        r"|bulb)(?: (?:does|will|would|is|just|still|do"
        rf"|can)){{0,2}} ?{_NOT}<2>(?:seat(?:ing|s|ed)?|seal(?:ing|s|ed)?|sit(?:ting|s)?"
        r"|close|lay(?:ing)?|lie|lying|line up|land|settle|fit tight\w*|set)\b(?! (?:up"
        rf"|open))|\b{_NOT} (?:seat|seal|sit)(?:ing|ting)?(?: down)?(?: properly| right"
        r"| well| flat| tight\w*| all the way)?\b|\b(?:sits?|sitting|seats?|lands?"
        r"|comes? down|closes?)<1>(?:crooked|off ?cent(?:er|re)|sideways|at an angle|wrong"
        r"|uneven\w*|cockeyed|lopsided|funny)\b|\bpoor seal\b|\bout of alignment\b"
        r"|\bmisalign\w*\b",
        "it does not meet its seat",
    ),
    card(
        "symptom",
        "new part did not help",
        r"\b(?:new|replaced|changed|tried|bought|installed)<6>(?:still (?:leak\w*|run\w*"
        r"|drip\w*|does|doing|not|the same|won't|having|refill\w*|trickl\w*)|did(?:n't"
        r"| not) (?:help|work|fix|fit)|doesn't (?:help|fix|fit|work)|no (?:luck|difference"
        r"|better|help)|same (?:problem|thing|issue))\b|\bthe new one (?:leaks|does|won't"
        r"|doesn't|is)\b",
        "another part, or the wrong one",
    ),
)

_ANY = (
    card(
        "symptom",
        "sweating tank",
        r"\bsweat(?:s|ing|y)?\b|\bcondensation\b",
        "moist air on a cold tank, not a leak",
    ),
    card(
        "symptom",
        "leaks somewhere",
        r"\bleak(?:s|y|ed|ing|age)?\b(?! (?:test|detect\w+|tablets?))",
        "where it leaks is the question",
    ),
)

SYMPTOMS: tuple[Card, ...] = (*_RUNNING, *_FLUSHING, *_PART, *_ANY)
