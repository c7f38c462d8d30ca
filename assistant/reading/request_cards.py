"""What customers ask a shop for: the parts by their many names, and the kinds of question."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_RUBBER = r"(?:rubber|red|black|blue|round|little|plastic)"
_WHERE = (
    r"(?:at the bottom|on the bottom|in the bottom|at bottom|that (?:stops|holds|seals"
    r"|keeps|plugs|covers|lifts|opens|closes|lets|goes)|over the (?:drain|hole)"
    r"|in the tank|inside)"
)
_HOW = (
    r"(?:how (?:do|does|can|could|should|would|to)|what(?:'s| is) the (?:best |right "
    r"|easiest )?way|instructions?|can you (?:explain|tell me how|show)|any tips"
    r"|tips (?:on|for)|is it (?:easy|hard|difficult)|do i (?:have|need) to)"
)
_PARTS = (
    r"(?:fl+app?ers?|flap|seals?|gaskets?|washers?|balls?|stoppers?|plugs?|parts?"
    r"|ones?|replacements?|thing\w*|handles?|lever|valves?|kit|seats?|lids?|dis[ck]s?"
    r"|rubbers?|bolts?|rings?|hose|toilet|canisters?|towers?|bulbs?|diaphragms?"
    r"|chains?|buttons?|these|this|it|piece|gizmo|doodad)"
)

# In this order: the longer name takes its words from the shorter.
WANTED: tuple[Card, ...] = (
    card("wanted", "wax ring", r"\bwax (?:ring|seal|gasket)s?\b", "the seal to the drain"),
    card(
        "wanted",
        "tank-to-bowl gasket",
        r"\b(?:tank[- ]to[- ]bowl|spud)(?: \w+)? ?(?:gasket|washer|seal|kit)s?\b"
        r"|\b(?:gasket|seal|washer)<2>between (?:the )?tank and (?:the )?bowl\b",
        "between tank and bowl",
    ),
    card(
        "wanted",
        "fill valve",
        r"\bfloat (?:for|of|on|in) (?:the |a |my |our )?(?:fill[- ]?valve|inlet|ball ?cock)\b"
        r"|\bfill[- ]?valves?\b|\bball ?cocks?\b|\binlet valve\b|\bfloat (?:valve|ball|cup"
        r"|arm)\b|\brefill valve\b|\bthe (?:part|thing|valve) that fills\b",
        "lets the water in",
    ),
    card(
        "wanted",
        "refill tube",
        r"\b(?:re)?fill (?:tube|hose)\b|\blittle (?:black |rubber )?(?:tube|hose)\b",
        "from fill valve to overflow",
    ),
    card(
        "wanted",
        "seal",
        r"\b(?:flush valve|canister|tower|drop valve|drain valve|dump valve)<1>(?:seal"
        r"|gasket|flapper|washer|o-?ring)s?\b",
        "the seal itself",
    ),
    card(
        "wanted",
        "flush valve",
        r"\b(?:flush|drain|drop|dump) ?valves?\b|\bvalve assembly\b|\brebuild kit\b"
        r"|\btower kit\b|\b(?:whole|entire|complete) (?:canister|tower|guts|insides"
        r"|assembly)\b|\bcanister assembly\b",
        "the whole valve",
    ),
    card(
        "wanted",
        "handle",
        r"\b(?:handle|trip lever|flush(?:ing)? lever|tank lever|lever)s?\b",
        "the handle",
    ),
    card("wanted", "button", r"\b(?:push ?)?buttons?\b(?! down)", "the push button"),
    card(
        "wanted",
        "chain",
        r"\b(?:lift |flapper |flush )?chains?\b(?! (?:is|gets|keeps|store|slack|length|goes|go))",
        "the chain",
    ),
    card(
        "wanted",
        "lid",
        r"\b(?:tank|cistern)[- ](?:lid|cover|top)s?\b|\blid (?:for|to|of) (?:the "
        r"|my )?(?:\w+ ){0,2}tank\b|\b(?<!seat )(?<!rubber )lids?\b",
        "the tank's lid",
        unless=r"\bseat\b",
    ),
    card(
        "wanted",
        "seat",
        r"\b(?:toilet )?seat(?:s| lid| cover)?\b(?! (?:of|on) the (?:valve"
        r"|flush))(?<!valve seat)(?<!the seat)|\b(?:new|a|the) toilet seat\b",
        "to sit on",
    ),
    card(
        "wanted",
        "handle",
        r"\b(?:plastic|metal|brass|lever|flush|trip)[- ]arm\b|\b(?:just|only) the arm\b",
        "what lifts the seal",
    ),
    card("wanted", "bolts", r"\b(?:tank |closet |floor |seat )?bolts?(?: kit| set)?\b", "bolts"),
    card(
        "wanted",
        "supply hose",
        r"\b(?:supply|water|inlet|braided)[- ](?:line|hose|tube|pipe)s?\b",
        "brings the water",
    ),
    card(
        "wanted",
        "shut-off valve",
        r"\b(?:shut ?-?off|stop|isolation|angle)[- ](?:valve|cock|stop)s?\b",
        "at the wall",
    ),
    card(
        "wanted",
        "overflow tube",
        r"\b(?:replacement |new )over ?flow (?:tube|pipe)s?\b",
        "the standpipe",
    ),
    card(
        "wanted",
        "whole toilet",
        r"\b(?:new|complete|whole|entire|another|replacement"
        r"|cheap) toilets?\b(?! (?:flapper|seal|seat|handle|part|tank|lid|ball|valve"
        r"|stopper))|\btoilets? (?:in stock|for sale)\b",
        "not a part",
    ),
    card(
        "wanted",
        "other part",
        r"\b(?:faucet|tap washer|shower ?head|shower valve|sink (?:stopper|plug|strainer)"
        r"|water heater|bidet|urinal|cartridge|aerator|garbage disposal|drain snake"
        r"|plunger|toilet brush)s?\b",
        "of another fixture",
    ),
    card(
        "wanted",
        "seal",
        rf"\b{_RUBBER}<2>(?:thing(?:y|ie|amajig|s)?|part|piece|bit|flap|gizmo|doodad"
        rf"|whatsit|whatchamacallit)(?: <3>{_WHERE})?\b|\b(?:thing(?:y|ie|amajig|s)?|part"
        rf"|piece|bit|gizmo|doodad)<1>{_WHERE}<3>(?:water|hole|bottom|drain|tank|flush\w*"
        r"|up|down|leak\w*)\b",
        "a customer's words for the seal",
    ),
    card(
        "wanted",
        "seal",
        r"\b(?:toilet |tank |flush |rubber |replacement |new |old |red |black "
        r"|canister ){0,4}(?:fl+app?ers?|flap|seals?|gaskets?|washers?|tank balls?"
        r"|rubber balls?|flush balls?|stoppers?|plugs?|bulbs?|dis[ck]s?|diaphragms?"
        r"|o-?rings?)\b(?! (?:is|are|keeps|won't|doesn't|properly|well))|\b(?:tank|rubber"
        r"|flush|toilet|the|a|new) ball\b(?! ?(?:cock|valve))",
        "any name of the seal",
    ),
)

ASKS: tuple[Card, ...] = (
    card(
        "asks",
        "thanks",
        r"\b(?:just wanted to (?:say|thank|let you know)|works? like a charm|in and done|cheers!"
        r"|(?:works?|working|fits?|fitted) (?:great|perfectly|beautifully|wonderfully|a treat)\b"
        r"(?! ?\?)|all sorted(?: now)?\b"
        r"|thank you (?:so|very) much for the|thank(?:s| you)[^.?!]{0,40}(?:fits|fitted|works"
        r"|arrived))\b",
        "a word of thanks",
    ),
    card(
        "asks",
        "spam",
        r"\b(?:seo|backlinks?|guest post|rank(?:ing)? (?:your|higher|on)|first page of"
        r"|web ?site (?:design|traffic|ranking)|crypto|bitcoin|unsubscribe|lottery"
        r"|inheritance|business loan|marketing services|lead generation"
        r"|increase your (?:sales|traffic)|viagra|casino|wire transfer|dear beneficiary"
        r"|click (?:here|the link) to|business owner|your (?:listing|domain)|free visitors)\b",
        "somebody sells to the shop",
    ),
    card(
        "asks",
        "order status",
        r"\b(?:cancel (?:my|the|our|this) order|order (?:status|number|no|#)|status of (?:my|the"
        r"|our) order|where(?:'s"
        r"| is) my (?:order|package|parcel|part|flapper|stuff)|track(?:ing)?(?: number"
        r"| info\w*)?|(?:has|have|hasn't|haven't|not|never|n't) (?:it |my order |yet "
        r"|been )?(?:shipped|arrived|received|come yet|gotten|delivered)|when will (?:it"
        r"|(?:my|the) (?:order|part|parcel|replacement|new one)) (?:ship|arrive|come|get here)"
        r"|my order|ordered<6>(?:ago|last|yet|never|still)"
        r"|nothing(?:'s| has)? (?:come|arrived|turned up)"
        r"|(?:not|n't|never)<1>(?:shown|showed|turned) up"
        r"|paid for<6>(?:the \d|last|on|and)|(?:in|inside) the (?:envelope|parcel|package|packet"
        r"|jiffy bag)"
        r"|only (?:one|1|half)<2>(?:came|arrived|turned up|was in)"
        r"|order (?:number |no\.? ?|# ?)?\d{3,})\b",
        "an order already made",
    ),
    card(
        "asks",
        "returns",
        r"\b(?:returns?(?: (?:it|this|policy|the|label|them))?|refund\w*|exchange"
        r"|(?:send|post|mail|ship|bring|take|give)<3>back|sent back|money back|want my<5>back"
        r"|sold me<2>(?:rubbish|junk|crap|wrong)"
        r"|return policy"
        r"|warranty"
        r"|take it back|wrong (?:part|item|one) (?:was )?(?:sent|shipped|delivered|arrived"
        r"|came))\b(?! to normal)",
        "to give something back",
        unless=r"\b(?:already|thank(?:s| you) for)<5>(?:back|refund\w*|return\w*)\b"
        r"|\b(?:back|refund\w*|return\w*)<1>already\b",
    ),
    card(
        "asks",
        "discount",
        r"\b(?:(?:student |pensioner )?discounts?|coupons?|promo(?: code)?|price match"
        r"|bulk (?:price|pricing|rate"
        r"|order)|contractor (?:price|pricing|rate)|trade (?:price|account)|wholesale"
        r"|senior discount|cheaper if|deal on|sale on)\b",
        "a lower price",
    ),
    card(
        "asks",
        "shop hours",
        r"\b(?:(?:your|shop|store|business|opening) hours|what time|when (?:are"
        r"|do) you (?:open|close)|(?:are |r )?(?:you|u|ya) (?:guys )?(?:open|closed)"
        r"|you<2>open (?:on|till|until|late)|open (?:late|today|tomorrow|sundays?|saturdays?)"
        r"|where (?:are|r) you (?:located"
        r"|at|guys)|(?:your|the) (?:address|location|phone number|directions)"
        r"|where is (?:your|the) (?:shop|store)|come (?:by|in)(?:to)? (?:and|the|your|to)"
        r"|do you have a store|pay (?:by|with|in) (?:cheque|check|cash|card)|(?:take"
        r"|accept) (?:cheques?|checks?|cards?|cash))\b",
        "when and where",
    ),
    card(
        "asks",
        "shipping",
        r"\b(?:(?:you|it|they|order)<1>(?:despatch|dispatch|post|leave you|go out)|shipping"
        r"|ship to|postage|deliver(?:y|ies)?(?: time| to)?|do you (?:ship"
        r"|deliver|mail)|how (?:fast|soon|quick\w*) (?:can|could|will|do)"
        r"|how long<3>(?:arrive|ship|get here|deliver\w*|post\w*)|express|overnight (?:it"
        r"|shipping))\b",
        "how it gets there",
    ),
    card(
        "asks",
        "fitting service",
        r"(?<!what )(?<!which )(?<!flapper )(?<!seal )(?<!one )(?<!ring )"
        r"\b(?:(?:do|can|could|will|would) you(?: guys| also)? (?:fit"
        r"|install|put in|mend|repair"
        r"|fix|replace)(?! (?:it )?(?:in|into|on|with)\b)|(?:send|come)<2>(?:round|out|someone"
        r"|somebody|a plumber|to my house)|do you do (?:plumbing|repairs|installations?)"
        r"|home visit)\b",
        "somebody to do the work",
    ),
    card(
        "asks",
        "price",
        r"\b(?:how much(?: is| are| does| do| would| for| will)\b(?!<2>water)|price[sd]?"
        r"|cost(?:s|ing)?|quote|what do (?:you|they|we) (?:charge|want for|pay)"
        r"|how much (?:do|did) (?:we|you) (?:pay|charge)|how expensive"
        r"|\$\?)\b",
        "what it costs",
    ),
    card(
        "asks",
        "stock",
        r"\b(?:still (?:be had|to be had|made|sold|available|(?:get|buy) (?:one|it|them))|be had"
        r"|in stock|(?:do|does|would|dont|don't) (?:you|u|ya|y'all)(?: guys| all"
        r"| still| happen to| also| by chance)* (?:have|carry|sell|stock|got|make)|(?:have"
        r"|got) you (?:got )?(?:any|a)|available|availability|on hand|back ?order\w*"
        r"|out of stock|can (?:i|you) (?:get|order)|(?:can i|where (?:can|do"
        r"|could) i) (?:buy|get|find|order))\b",
        "whether the shop has it",
    ),
    card(
        "asks",
        "measure how",
        r"\b(?:(?:how|where)<4>measure\w*|what (?:do|should) i measure"
        r"|measure from<3>(?:where|which)|how<3>(?:know|tell|find out|figure out"
        r"|determine)<5>(?:size|2 ?(?:in\w*|\"|or)|two inch|three inch|3 ?(?:in\w*|\"))"
        r"|where<2>measure|which (?:part|bit)<2>measure)\b",
        "how to measure",
    ),
    card(
        "asks",
        "identify toilet",
        r"\b(?:(?:what|which) (?:model|make|brand|kind of toilet|toilet)<3>(?:is (?:it"
        r"|this|mine|my)|do i have|i have|i've got|this is)|(?:how|where)<4>(?:model|brand"
        r"|make (?:of|is|and|no))(?: number| no)?|where<4>(?:number|stamp\w*|date)"
        r"|who made (?:it|this|my)"
        r"|identify (?:my|the|this|what) (?:toilet|model|tank)?)\b",
        "which toilet it is",
    ),
    card(
        "asks",
        "why",
        r"(?<!see )\b(?:why (?:does|do|is|are|did|would|has|won't|doesn't|isn't|not|the|it|my|i)\b"
        r"|why ?(?=[?.!,\n]|$)"
        r"|how come\b|what(?:'s| is| could be| would be| might be)?<1>(?:caus\w+"
        r"|the (?:problem|reason|matter|cause|issue)|wrong|going on|happening)"
        r"|what (?:makes|could make|would make|causes)\b|is (?:that|this|it) normal"
        r"|should i (?:worry|be worried))",
        "the cause",
    ),
    card(
        "asks",
        "what is",
        r"\b(?:what(?:'s|s| is| are) (?:an? |the difference|meant|this|that part|the part)"
        r"|what(?:'s|s| is| are) (?:the|that|those)<9>(?:(?:actually |really )?for(?= ?[?.,!]"
        r"| ?$)|do\b|mean\b)"
        r"|what does<4>(?:do|mean)|difference between|how (?:does|do)<4>work|how (?:often"
        r"|long)(?: does| do| should| will| can)\b|explain (?:what|the)|is (?:silicone"
        r"|rubber|red|genuine) better)\b",
        "what something is",
    ),
    card(
        "asks",
        "how to",
        rf"\b(?:{_HOW})<3>(?:i |you |we |one |go about |it |the |my |properly |even "
        r"|best )*(?:to )?(?:replace|replac\w+|chang\w+|install\w*|put|fit|clean\w*"
        r"|remov\w+|get|take|tak\w+|adjust\w*|fix\w*|mend\w*|repair\w*|attach\w*|hook\w*"
        r"|connect\w*|set|turn\w*|shut|drain|empty|swap\w*|stop|seal|seat|align|shorten"
        r"|cut|use|open|lift|unscrew\w*|undo|know|tell|tighten|loosen|do|make"
        r"|prevent|save|test|check|dispose|keep|lubricate|care|maintain|reach|pull)\b"
        r"|\b(?:installation|fitting) instructions?\b|\bstep by step\b|\bhow to\b"
        r"|\bwalk me through\b|\bneed help (?:installing|replacing|changing|putting"
        r"|fixing)\b",
        "how something is done",
    ),
    card(
        "asks",
        "does it fit",
        r"\b(?:(?:will|would|does|do|should|can|could|is)<6>(?:fit|work (?:on|in|with|for)"
        r"|compatible|interchange\w*|the right (?:one|part|size|flapper|seal)|same as"
        r"|the same)|(?:does|will|would) (?:it|this|that|these|they) (?:fit|work"
        r"|do|go|suit|be (?:ok|okay|fine|right))"
        r"|compatible with|(?:can|could|may) i use(?=<4>(?:it|this|that|these|one|flapper|seal|ball"
        r"|ring|gasket|part)\b)|is (?:this|that|it) the (?:right"
        r"|correct)|any ?one (?:fits|will)|universal (?:ones? )?(?:fit|work)"
        r"|works? with (?:my|a)\b(?=[^.]{0,60}\?))\b",
        "a part that he has in mind",
    ),
    card(
        "asks",
        "a person",
        r"\b(?:(?:talk|speak|speaking|chat) (?:to|with) (?:a |some|the "
        r"|an actual )?(?:person|human|someone|somebody|one|manager|owner|real person)"
        r"|call me|give me a (?:call|ring)|phone me|ring me)\b",
        "a person, not an answer",
    ),
    card(
        "asks",
        "which part",
        rf"\b(?:(?:which|what) (?:\w+ ){{0,2}}?{_PARTS}(?:\(s\))? for (?=an? |my |the |our )"
        rf"|which (?:\w+ ){{0,4}}?can i use\b|what (?:\w+ ){{1,4}}?can i use\b"
        rf"|(?:which|what) (?:\w+ ){{0,4}}?(?:do i|would i|should i|will i|i (?:need"
        r"|want|should|can|must))(?!<1>(?:check|look|do|try|watch|know|think|feel|inspect|start)\b)"
        rf"|(?:which|what) (?:\w+ ){{0,4}}?(?:fits?|will fit|would fit|works?|goes|is right"
        r"|to (?:buy|get|order|use|replace)|do you (?:recommend|suggest)|would you)\b"
        r"|(?:screw\w*|push\w*|thread\w*|clip\w*|ring|pegs?)(?: ?(?:in|on|fit))? or (?:a )?"
        r"(?:screw\w*|push\w*|thread\w*|clip\w*|ring|pegs?)"
        r"|which (?:ones?|parts?|seals?|flappers?|size|gaskets?|balls?|rings?|washers?)"
        r"|which(?= ?\?)|what (?:have you got|do you (?:have|stock|sell))(?= (?:for|like|that)\b)"
        r"|what (?:might|may|could|would|will) (?:close|seal|suit|fit|go)|what (?:part|size|seal"
        r"|flapper|gasket|kind|type|number|do i need|i need|should i (?:buy|get|order))"
        r"|(?:tell|give|send) me (?:the|its) (?:part )?number|what (?:would you|you'd"
        r"|you would) (?:put|use|fit"
        r"|suggest)|part (?:number|no\.?|#)|right (?:one|part"
        r"|flapper|seal|replacement)"
        r"|correct (?:one|part|flapper|seal|replacement)"
        r"|(?<!dont )(?<!don't )(?<!not )(?:need(?:ing)?|looking for"
        r"|searching for|want|order|buy|purchase|sell me|send me|get me)(?: to (?:buy|get"
        rf"|order|find|replace|purchase))?(?=<6>{_PARTS}))\b",
        "which part it is",
    ),
)

# Wherever it is spoken of: no tank of a house is meant.
OTHER_TOILET: tuple[Card, ...] = (
    card(
        "wanted",
        "other toilet",
        r"\b(?:boat|marine|sea|caravan|camper|rv|portable|composting|cassette|chemical) toilets?\b"
        r"|\btoilet<6>(?:boat|caravan|camper ?van|motor ?home)\b",
        "a toilet without a tank of the kind we know",
    ),
)

PHOTO: tuple[Card, ...] = (
    card(
        "photo",
        "offered",
        r"\b(?:(?:can|could|will|happy to|glad to|i'll|able to"
        r"|would be able to) (?:also )?(?:send|take|text|email|attach|provide|snap"
        r"|post)<3>(?:photos?|pics?|pictures?|images?|snapshots?)|(?:send|want|need"
        r"|like)<2>(?:photos?|pics?|pictures?)(?=[^.!?]{0,30}\?)|if<4>(?:photos?|pics?"
        r"|pictures?)<2>(?:help\w*|useful|need\w*))\b",
        "a picture could come",
    ),
    card(
        "photo",
        "attached",
        r"\b(?:(?:see|here(?:'s| is| are)|attach\w*|enclos\w+|includ\w+|sent|sending|took"
        r"|find|took some|with|look at)<3>(?:photos?|pics?|pictures?|images?|snapshots?"
        r"|attachments?)|(?:photos?|pics?|pictures?|images?|snapshots?)(?: are| is"
        r"| of<4>)? ?(?:attached|enclosed|below|included|above)|(?:see"
        r"|as) (?:the )?attached|in the (?:photo|pic|picture|image)|img[_-]\d+|\[(?:image"
        r"|cid)[:\]])",
        "a picture came along",
    ),
)
