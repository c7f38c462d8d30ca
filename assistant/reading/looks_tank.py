"""The tank: its kind, pieces, overflow, how many seals, and whether the valve is its first."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_VALVE = (
    r"(?:flush (?:valve|system|unit|works)|over ?flow(?: ?(?:pipe|tube))?(?= (?:and|\w+ installed))"
    r"|(?:drain|drop|dump) valve|valve assembly|flush assembly"
    r"|flush mechanism|flush kit)"
)
_INSIDES = (
    r"(?:(?:all |everything |all of )(?:the )?(?:in)?(?:guts|insides?|innards"
    r"|internals|works|parts|workings|hardware)|(?:the |whole |entire |new "
    r"|its )(?:guts|insides|innards|internals|mechanism|workings)|everything (?:in"
    r"|inside|that was in) (?:the |it|there|its )(?:tank|cistern)?|(?:the )?whole insides?"
    r"|over ?flow(?: ?(?:pipe|tube))? and (?:everything|all|the rest|flapper|the lot)(?: else)?)"
)
_NEW = (
    r"(?:replac\w+|chang\w+|swap\w+|renew\w+|rebuil\w+|redid|redone|put in|installed"
    r"|new|put)"
)

_TWO = r"(?:two|2|a pair of|a couple of)"
_SEALS = (
    r"(?:flappers|seals|gaskets|stoppers|tank balls|rubber (?:seals|rings|discs|balls"
    r"|washers|gaskets|stoppers))"
)

_KIND_CARDS = (
    card(
        "tank_kind",
        "dual-flush",
        r"\bno (?P<it>(?:push ?)?buttons?)\b(?! (?:on the wall|works?))"
        r"|\b(?:dual|double|two)[- ]flush(?:es)?\b|\b(?:two|2|dual|double|twin"
        r"|split)[- ](?:\w+ )?(?:flush )?(?:push ?)?buttons?\b|\b(?:big|large"
        r"|full)<2>(?:and|or|&|/) ?(?:a )?(?:small|little|half)<1> ?(?:button|flush)\b"
        r"|\bsmall<2>(?:and|or|&) (?:a )?(?:big|large)<1> ?(?:button|flush)\b"
        r"|\b(?:pee|wee|number (?:one|1)) button\b|\bhalf (?:and|or) (?:a )?whole flush\b"
        r"|\bhalf[- ]?(?:and|/|,| ) ?full flush\b|\bbutton for (?:number )?(?:1|one|pee"
        r"|liquid|small)\b|\b(?:one|1) (?:button )?for (?:pee|liquids?|number (?:one|1))\b"
        r"|\bbutton<6>(?:split|divided|cut|parted|halved)\b(?! (?:pin|off))|\btwo-part button\b"
        r"|\b(?:small|little) (?:button|one) (?:in|inside|within) (?:a |the )?(?:big|large)\w*\b"
        r"|\b(?:short|half|small|little|eco) flush (?:and|or|/) (?:a )?(?:long|full|big|large)\b",
        "two volumes, two buttons",
        unless=r"\bflush(?:es)? twice\b|\bdouble flush(?:es|ing)\b|\bhave to\b|\btwo flushes\b",
    ),
    card(
        "tank_kind",
        "pressure",
        r"\b(?:pressure|power|air)[- ](?:assist\w*|flush|tank|vessel)\b|\bpressuri[sz]ed\b"
        r"|\b(?:loud )?who+sh(?:es|ing)?\b|\b(?:plastic|sealed|black)<1> ?(?:vessel|cylinder"
        r"|bladder|tub|bottle|drum|pot) (?:inside|in)\b|\bcompressed air\b|\bsealed<1>(?:vessel|tub"
        r"|bottle|drum|pot)\b|\b(?:goes|went|going|flushes)(?: off)? (?:bang|like an? (?:jet|cannon"
        r"|gun|rocket|aeroplane|airplane|plane))\b|\btank (?:inside|within) (?:the |a )?tank\b",
        "compressed air, no flapper",
        unless=r"\b(?:water|low|no|house|supply) pressure\b",
    ),
    card(
        "tank_kind",
        "tipping",
        r"\b(?:tipping|tilting|pivoting|tilt|tip)[- ](?:bucket|tray|pan|tank)\b|\b(?:bucket|tray"
        r"|pan|trough)<3>(?:tips?|tilts?|dumps?|pivots?|flips?)\b",
        "a bucket tips its water out",
    ),
    card(
        "tank_kind",
        "concealed",
        r"\b(?:tank|cistern)<3>(?:in|inside|behind|within) (?:the |a )?(?:\w+ )?wall\b"
        r"|\b(?:in[- ]wall|concealed|hidden|built[- ]in|recessed)<1> ?(?:tank|cistern"
        r"|toilet|carrier|frame)\b|\bwall[- ](?:hung|mounted|hanging)<1> ?(?:toilet|bowl"
        r"|pan|wc)?\b(?! tank)|\bbuttons? (?:in|on) the wall\b|\b(?:tank|cistern) hidden\b"
        r"|\b(?:tank|cistern) is (?:all )?(?:hidden|concealed|built in"
        r"|boxed in|behind the tiles)\b|\b(?:flush )?plate (?:on|in) the wall\b"
        r"|\b(?:hidden|buried|sunk|tucked|tank|cistern|works|everything)<3>behind (?:the |a )?"
        r"(?:\w+ )?(?:tiles?|tiling|panel\w*|plaster\w*|wall|boxing)\b"
        r"|\b(?:only|just|nothing but) (?:an? |the )?(?:\w+ )?(?:button|flush)?[- ]?plate\b"
        r"|\b(?:flush|button|push)[- ]plate\b",
        "behind the wall",
        unless=r"\b(?:water|leak\w*|damp|tank hung|high tank) (?:in|behind|on) the wall\b",
    ),
    card(
        "tank_kind",
        "gravity",
        r"\bgravity(?:[- ](?:fed|flush|tank|type))?\b|\b(?:regular|normal|ordinary"
        r"|standard) (?:gravity )?(?:tank|toilet|flush)\b",
        "water falls by itself",
    ),
)

_PIECE_CARDS = (
    card(
        "pieces",
        "1",
        r"\b(?:one|1|single)[- ]?(?:piece|pc|pce)\b(?! with\b)"
        r"|\btank and bowl are (?:all )?(?:one"
        r"|joined|molded|moulded|fused|together)\b|\b(?:tank|bowl) (?:is"
        r"|are) (?:all )?(?:one|part of|molded|moulded) ?(?:piece|unit|together)?\b"
        r"|\b(?:moulded|molded|cast) (?:with|into|onto|together with) the (?:bowl|pan)\b"
        r"|\b(?:all|in|just|is) one (?:piece|unit)\b|\bno (?:seam|join|joint)\b"
        r"|\bone (?:solid |single |big |great )?(?:lump|casting|chunk|block|moulding|molding)\b"
        r"|\b(?:tank|cistern)<3>(?:grows|flows|runs) (?:out of|into) the (?:bowl|pan)\b",
        "tank and bowl in one",
        unless=r"\bone piece of\b",
    ),
    card(
        "pieces",
        "2",
        r"\bbolted together\b|\b(?:two|2)[- ]?(?:piece|part|peice|pc|pce)\b|\bseparate (?:tank"
        r"|bowl)\b"
        r"|\btank and (?:the )?bowl (?:are|come|can be)<1>(?:separate\w*|apart|two)\b"
        r"|\btank (?:is )?(?:separate|bolts|bolted|sits|lifts off)\b"
        r"|\b(?:tank|cistern)s? (?:un)bolts?\b|\b(?:two"
        r"|2) (?:separate )?pieces\b",
        "tank and bowl apart",
        unless=r"\bbroke\w*|\bcracked\b|\binto\b|\bin (?:two|2) pieces\b",
    ),
)

_OVERFLOW_CARDS = (
    card(
        "overflow",
        "square",
        r"\bover ?flow(?: tube| pipe)?\s?[:=-]\s?square\b|\b(?:square|rectangular|boxy"
        r"|box[- ]shaped)<2>(?:over ?flow|(?:stand ?)?pipe|tube|riser)\b"
        r"|\b(?:over ?flow(?: (?:pipe|tube))?|tube|pipe) (?:is |was "
        r"|that's )?(?:a )?(?:square|rectangular)\b",
        "a square overflow takes no ring",
    ),
    card(
        "overflow",
        "round",
        r"\bover ?flow(?: tube| pipe)?\s?[:=-]\s?round\b|\bround<2>(?:over ?flow"
        r"|(?:stand ?)?pipe|tube|riser)\b|\b(?:over ?flow(?: (?:pipe|tube))?|tube"
        r"|pipe) (?:is |was |that's )?(?:a )?round\b",
        "a round overflow may take a ring",
        unless=r"\b(?:goes|slips|slides|fits|wraps|ring|collar|strap\w*|belt|button\w*)"
        r" (?:a)?round\b",
    ),
    card(
        "overflow",
        "none",
        r"\bno over ?flow(?: (?:pipe|tube))?\b(?! (?:problem|issue))|\b(?:without|(?:does"
        r"|do|did)(?:n't| not) have|isn't|there's no|is no|not see|n't see) (?:an |any "
        r"|a )?over ?flow(?: (?:pipe|tube))?\b",
        "no tube to be seen",
    ),
)

# 'The big one is fine' speaks of the other.
_NOT_IF_FINE = (
    r"(?!(?: (?:one|flapper|flap|valve|seal))?(?: (?:is|was|has|got|seems?|looks?|works?|seals?"
    r"|holds?"
    r"|been))?(?: \w+){0,2}? (?:fine|ok|okay|good|new|done|replaced|changed|well|sound|stay)\b)"
)
_COUNT_CARDS = (
    card(
        "seals_in_tank",
        "2",
        r"\b(?:has|got|there(?:'s| are| is| were)|with|takes|uses?|see|are"
        rf"|(?<!\bi )(?<!\bwe )have)<1>(?P<it>(?:both|{_TWO})<2>{_SEALS})\b(?! (?:in stock"
        rf"|from))|\b(?P<in>(?:both|{_TWO})<2>{_SEALS})\b(?=<2>(?:inside\b|in (?:the|my|it"
        r"|there|this|that|a)\b))|\b(?:dual|double|two|2)[- ](?:flapper|seal)\b(?! kit)"
        r"|\bthere(?:'s| are| is) (?:two|2)(?: of (?:them|those))? in (?:it|there)\b"
        r"|\bboth (?:flappers|seals)\b",
        "a tank that takes two",
        unless=r"\b(?:tried|bought|ordered|replaced|gone through|different|third)\b",
    ),
    card(
        "seals_in_tank",
        "1",
        r"\b(?:only |just )(?:the )?(?:one|1|a single)<1>(?:flapper|seal|gasket|stopper)\b",
        "a tank that takes one",
    ),
    card(
        "position",
        "rinse",
        r"\b(?:small|smaller|little|tiny|wee|baby|daughter) (?:left |right |strap |clip "
        r"|rubber )?(?:one|1|lid|hole|plug|of the two|flapper|flap|valve"
        r"|side|seal)"
        rf"\b{_NOT_IF_FINE}|\brins(?:e|es|ing) (?:flap|side|one|valve|seal|flapper"
        rf"|part)\b{_NOT_IF_FINE}"
        r"|\bfeeds? the rim\b|\bfor the rinse\b|\b(?:does|for) the rinsing\b"
        r"|\b(?:washes|rinses) the (?:sides|rim|bowl|pan)\b"
        r"|\bround the (?:top|rim|sides) of the (?:pan|bowl)\b"
        r"|\b(?:smaller|small|little) (?:flapper |seal |one )(?:of the two|is for"
        r"|for the|on the (?:left|right|side))(?: (?:rim|rinse))?\b",
        "the valve that rinses the rim",
    ),
    card(
        "position",
        "main",
        r"\b(?:one|flap|seal|flapper)<3>(?:empties|drains) the (?:whole )?tank\b"
        r"|\b(?:does|gives you|for) the (?:actual|real|proper|main) flush\b"
        rf"|\bmain (?:flush )?(?:valve|seal|flapper|one|side)\b{_NOT_IF_FINE}"
        r"|\b(?:big|bigger|large|larger|mother) (?:left |right |rubber )?(?:flapper|flap|side"
        r"|one|1|lid|hole|plug|of the two|1|seal)"
        rf"\b{_NOT_IF_FINE}",
        "the valve that empties the tank",
        unless=r"\bmain (?:water|shut|supply)\b",
    ),
    card(
        "position",
        "main|rinse",
        rf"\b(?:(?:only|just) )?(?:(?:one|either)(?: or the other)?) of (?:the|its|my|these"
        rf"|those|them)<1>(?:two|2|pair)(?:(?: \w+)? {_SEALS})?\b(?! (?:toilets?|loos?|johns?"
        rf"|bathrooms?|you|i|we|that you)\b)"
        rf"|\b(?:only|just) one of (?:the |its |my )?{_SEALS}\b",
        "one of two seals, and not which",
        unless=r"\b(?:tried|bought|ordered|sent|toilets?|loos?|bathrooms?|johns?)\b",
    ),
)

# Whatever holds the seal: where it is not the first one, the toilet's name tells nothing.
_HOLDER = (
    r"(?:flush ?valve|over ?flow(?: ?(?:tube|pipe))?(?:(?: and|/| ?&) ?(?:the )?flapper(?: seat)?)?"
    r"(?: assembly| unit)?|(?:drain|flush|tower|canister)(?: valve)? (?:assembly|unit)|canister"
    r"|tower|flush (?:mechanism|system|unit|works)|(?:tank )?(?:mechanism|works|guts|innards"
    r"|insides?|internals|workings)|everything (?:inside|in (?:the|it|there))(?: tank)?)"
)
_NOT_THE_SEAL_OF_IT = r"(?! ?(?:seal|ring|gasket|washer|flapper|rubber|handle|lever|button)s?\b)"
_CHANGED = r"(?:replaced|changed|swapped|renewed|redone|rebuilt|upgraded|converted)(?: out)?"

_HISTORY_CARDS = (
    card(
        "valve_replaced",
        "yes",
        rf"\b{_HOLDER}{_NOT_THE_SEAL_OF_IT}<2>(?:(?:is|was|are|were|has been|have been|had been|got"
        rf"|been)(?: \w+ly| all| also)? {_CHANGED}|(?:is|was|are|were)(?: \w+)?"
        r" (?:new|newer|aftermarket|after-market|universal|from a kit|another make)\b"
        r"|(?:came|come)<2>kit\b|(?:(?:is|was|are|were)(?:n't| not)|isnt|arent|wasnt|not) "
        r"(?:the |an? )?(?:original|first|factory|genuine|one it came|one that came|stock)"
        r"|(?:is|was|are|were) non-?original)"
        r"|\b(?:ripped|tore|took|pulled|threw) out (?:all )?(?:the |its |everything)<1>"
        r"(?:guts|insides|innards|works|mechanism|old stuff|in (?:it|there))\b"
        r"|\b(?:put|fitted|installed|stuck)<4>\bkit in\b|\bkit (?:was |got )?(?:put |fitted )in\b"
        r"|\bflush ?valve<3>(?:cracked|broke\w*|snapped|failed|leaked|gave out|died|went)"
        r"[^.;!?]{0,40}\bnew one\b"
        rf"|\b(?:drain|flush|drop) valve{_NOT_THE_SEAL_OF_IT}[^.;!?]{{0,60}}\b(?:put in|fitted"
        r"|installed|renewed)\b"
        r"|\b(?:swapped|put|fitted|installed|changed|went)<3>(?:tower|canister|flush ?valve)s?\b"
        rf"{_NOT_THE_SEAL_OF_IT}(?! (?:back|seal))"
        r"|\b(?:not|n't|no|nothing|never)<3>original<1>(?:bits?|parts?|pieces?|things?)?<1>"
        r"(?:left|in (?:it|there|that))\b|\bnothing original\b"
        rf"|\b(?:had|have|got)<2>{_HOLDER}{_NOT_THE_SEAL_OF_IT} {_CHANGED}\b"
        rf"|\b(?:{_CHANGED}|(?:put|fitted|installed|got|have|had)(?: in)?(?: \w+)? new)<2>"
        rf"{_HOLDER}{_NOT_THE_SEAL_OF_IT}(?= |$|[,.;!?)])|\b(?:not|n't|non-?|no longer)<1>(?:the "
        rf"|an? )?(?:original|factory|aftermarket) {_HOLDER}{_NOT_THE_SEAL_OF_IT}"
        r"|\b(?:aftermarket|after-market|non-?original|replacement) "
        rf"{_HOLDER}{_NOT_THE_SEAL_OF_IT}",
        "what holds the seal is not the first one",
        unless=r"\b(?:never|not|n't)(?: ever)? (?:been )?(?:replaced|changed|swapped|touched"
        r"|renewed)\b|\b(?:want|need|like|how|should|could|can|do i|trying|rather|if|looking"
        rf"|going) (?:i |to |for |a |me )*(?:{_CHANGED}|replac\w+|chang\w+|put|new|a)\b|\bwhat\b",
    ),
    card(
        "valve_original",
        "yes",
        r"\b(?:never|not|n't|(?:nobody|no[ -]?one|none of us)(?:'s| has| have)?)(?: ever)?"
        r" (?:been )?(?:replaced|changed|touched|worked on"
        r"|opened up|rebuilt|messed with)(?: anything| it| any of it| the (?:flush valve"
        r"|guts|insides))?\b|\b(?:all|everything(?:'s| is)?|still|it's|is|are|probably"
        r"|believe|think|completely|totally"
        r"|100%)(?: the)?(?: (?!not\b|n't|no\b|non)\w+)? original\b(?! (?:owners?|color"
        r"|colour|box|flapper|seal|fill|handle|chain|seat))|\boriginal (?:flush valve"
        r"|guts|innards|internals|parts|everything|insides|hardware|equipment"
        r"|mechanism|valve)\b|\bnothing(?: has| was|'s)?(?: ever)? (?:been )?(?:replaced"
        r"|changed)\b",
        "the valve it was made with",
        unless=r"\boriginal fill valve\b|\bexcept (?:for )?(?:the |a )?(?:new )?(?:flush|valve"
        r"|tower)\b|\b(?:replaced|changed|lost|threw)<1>the original\b|\b(?:flapper"
        r"|fill valve|handle|chain|seat|water heater|rubber) (?:has |have |was "
        r"|is )?(?:never|n't|not)\b",
    ),
    card(
        "valve_replaced",
        "yes",
        r"(?<!fill )(?<!inlet )\bvalve(?: in (?:my|our|the|it|this)(?: \w+)?)? (?:was|is"
        r"|has been|got)"
        r"(?: \w+)? (?:changed|replaced|swapped|renewed)\b"
        r"|\bno longer the (?:works|guts|insides|valve|mechanism)\b"
        r"|\b(?:new|other) (?:insides|innards|works)\b|\bout came (?:its|the) (?:guts|insides"
        r"|works)\b"
        r"|\b(?:flush )?valve<6>(?:taken|took|came|gave) out\b[^.;!?]{0,40}\b(?:another"
        r"|different|new|swapped)\b"
        r"|\b(?:gave|fitted|put)<5>new flush (?:assembly|valve|unit)\b"
        r"|\bvalve<6>(?:foreign|another|different|other)<1>(?:firm|maker|make|company|brand)"
        rf"|\b(?:plastic|{_VALVE}|{_INSIDES})(?: in (?:it|there|the tank))?<1>(?:looks?|is|are"
        r"|seems?)<3>(?:newer|cleaner|younger|fresher) than<1>(?:tank|toilet|rest|china"
        r"|porcelain|clay|bowl)"
        r"|\bvalve<4>(?:dazzling|bright|gleaming|shiny) (?:white|new)\b"
        rf"|\b(?:got|had|fitted|installed|put in)<3>new (?:flush )?valve?\b"
        rf"|\b{_NEW}(?: out)?<3>{_VALVE}\b"
        rf"|\b{_VALVE} (?:has been |was |is |got |had been "
        rf"|were )(?:replaced|new|changed|swapped|put in)\b|\b{_NEW}(?: out)? {_INSIDES}"
        rf"|\b{_INSIDES} (?:was |were |has been |have been |are |is "
        r"|got )(?:all )?(?:replaced|new|changed|redone)\b|\b(?:rebuilt|rebuild|redid"
        r"|overhauled|gutted)<2>(?:tank|toilet|insides?|guts)\b|\bnew tower(?: kit)?\b"
        r"|\btower kit\b|\b(?:rebuild|repair|conversion|retrofit) kit (?:was |has been "
        r"|went )?(?:installed|put in|in)\b|\b(?:installed|put in|fitted)<3>(?:rebuild"
        r"|conversion|tower|retrofit|flush valve)(?: kit)?\b|\bconverted (?:it )?to\b"
        r"|\breplaced (?:everything|the whole (?:thing|works|lot)|all of it)\b"
        r"|\b(?:the |its |a )valve(?: in (?:it|there|that))? (?:is|was) (?:brand |quite )?new\b"
        r"|\b(?:the |its )valve (?:has been |was |is |got |had been )(?:swapped|replaced"
        r"|changed|renewed)(?: out)?\b|\b(?:put|fitted|installed)<2>new kit\b|\bconversion kit"
        r"|\bretro-?fitted\b|\b(?:tower|canister|dual[- ]flush)<1>(?:conversion|retrofit)\b"
        r"|\b(?:changed|replaced|swapped|renewed|redid)<3>(?:everything|(?:in)?sides|guts)\b"
        r"|\b(?:everything|it all|all of it)(?: else)? (?:was|were|got|has been|is) (?:renewed"
        r"|replaced|changed|new)\b",
        "another valve than the one it was made with",
        unless=r"\b(?:want|need|have|going|like|how|should|could|can|do i|trying|rather"
        rf"|if) (?:i )?(?:to )?{_NEW}\b|\bflush valve (?:seal|flapper|gasket)\b"
        r"|\bneed a new\b|\bwithout replacing\b",
    ),
)

TANK: tuple[Card, ...] = (
    *_KIND_CARDS,
    *_PIECE_CARDS,
    *_OVERFLOW_CARDS,
    *_COUNT_CARDS,
    *_HISTORY_CARDS,
)
