"""How the old seal holds to its valve, and how it lifts."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_EARS = (
    r"\b(?:ears?|pegs?|pins|posts|(?:little |small |side |plastic |rubber |the |two |2 "
    r"|both )(?:arms?|wings|tabs|horns)|hooks?|lugs|loops)"
)
_POST = r"(?:ears?|pegs?|pins?|posts?|horns?|stubs?|hooks?|fingers?|nubs?|prongs?|lugs?|knobs)"
_UPWARD = r"(?:up\b|upwards?\b|upright\b|skywards?\b|(?:to|at|towards) the (?:ceiling|sky|lid)\b)"
_DOWNWARD = r"(?:down\b|downwards?\b|(?:to|at|towards) the (?:floor|ground|bottom)\b)"
_POINTS = (
    r"(?:point|piont|aim|face|stick|stand|hang|look|go|slope|turn|curve|lean|reach|jut)(?:s|ed"
    r"|ing|ting)?"
)
_FLUSH_ARM = (
    r"\b(?:trip lever|lever arm|handle|fill valve|ballcock|chain hook"
    r"|hook on the chain)\b"
)
_TUBE = (
    r"(?:over ?flow(?: ?(?:pipe|tube|riser))?|(?:stand ?|flush )?(?:pipe|tube)|riser"
    r"|stand ?pipe)"
)
_PEGS = (
    r"(?:horns?|stubs?|pegs?|pins?|posts?|fingers?|knobs?|nubs?|nubbins?|prongs?|studs?"
    r"|hinge pins?|bumps"
    r"|ears)"
)

_EAR_CARDS = (
    card(
        "ears",
        "up",
        rf"{_EARS}(?: that| which| are| is| were)?<3>(?:point|face|go|stick|turn|curve"
        r"|angle|curl|open|bend|hook|aim|pointing|facing|sticking|turned|curved"
        r"|angled)(?:s|ed|ing)?(?: straight| right)? (?:up\b|upwards?\b|skyward)",
        "ears hook over pegs from below",
        unless=_FLUSH_ARM,
    ),
    card(
        "ears",
        "down",
        rf"{_EARS}(?: that| which| are| is| were)?<3>(?:point|face|go|stick|turn|curve"
        r"|angle|curl|open|bend|hook|aim|hang)(?:s|ed|ing)?(?: straight| right)? (?:down\b"
        r"|downwards?\b)",
        "ears hook over pegs from above",
        unless=_FLUSH_ARM,
    ),
    card(
        "ears",
        "up",
        rf"\b(?:ears?|pegs?)\b[^.;!?]{{0,50}}\b(?P<they>they(?: all| both)? {_POINTS} {_UPWARD})"
        rf"|(?<=[.;] )(?P<it>they(?: all| both)? {_POINTS} {_UPWARD})"
        rf"|\b{_POST}\W{{0,3}}<5>{_POINTS}\W{{0,2}}<2>{_UPWARD}|\b{_POST},? (?:{_UPWARD})"
        rf"(?! and down)|\b(?:upright|upward) {_POST}\b",
        "pegs that stand up",
        unless=_FLUSH_ARM,
    ),
    card(
        "ears",
        "down",
        rf"\b(?:ears?|pegs?)\b[^.;!?]{{0,50}}\b(?P<they>they(?: all| both)? {_POINTS} {_DOWNWARD})"
        rf"|(?<=[.;] )(?P<it>they(?: all| both)? {_POINTS} {_DOWNWARD})"
        rf"|\b{_POST}\W{{0,3}}<5>{_POINTS}\W{{0,2}}<2>{_DOWNWARD}|\b{_POST},? (?:{_DOWNWARD})",
        "pegs that hang down",
        unless=_FLUSH_ARM,
    ),
    card(
        "ears",
        "up",
        r"\b(?:up(?:ward)?s?[- ](?:facing|pointing|turned|curved)|upturned|upright|up) (?:ears"
        r"|hooks|arms|tabs|pegs|pins|fingers)\b|\b(?:ears?|pegs?|pins?|fingers?)\W{0,3}up(?:wards?"
        r"|right)?\b(?! and down)"
        r"|\b(?:ears|pegs|posts)\b(?:[^.;!?]|\.\d){0,45}(?:,| and| both) (?:both |all )?"
        r"(?:upwards?|upright)\b"
        r"|\b(?:ears|pegs) are up\b|\b(?:ears|pegs|pins)(?: are| were)? (?:up)?turn(?:ed|ing) up\b"
        r"|\b(?:ears|pegs|pins)(?: are| were)? upturned\b"
        r"|\bhooks? (?:are )?(?:on|at) (?:the )?top\b",
        "ears that point up",
    ),
    card(
        "ears",
        "down",
        r"\b(?:down(?:ward)?s?[- ](?:facing|pointing|turned|curved)|downturned|hanging"
        r"|down) (?:ears|hooks|arms|tabs|pegs|pins)\b|\b(?:ears?|pegs?)\W{0,3}down(?:wards?)?\b"
        r"|\bpegs<7>hang(?:ing)?(?: down| upside down| under)\b|\b(?:ears|pegs) are down\b"
        r"|\bhooks? (?:are )?(?:on|at) (?:the )?(?:bottom|underside)\b",
        "ears that point down",
    ),
    card("ears", "none", r"\bear-?less\b|\bwithout ears\b", "a seal that holds otherwise"),
    card(
        "ears",
        "up|down",
        r"\b(?:ears?|(?:two|2|both|rubber|plastic|side|little) (?:little |small |rubber "
        r"|plastic |side )?(?:arms|wings|tabs|hooks|lugs|loops|horns))\b(?! (?:on"
        r"|of) the (?:handle|lever|chain))",
        "ears, but not which way they point",
        denied="none",
        unless=r"\b(?:by|to|plug|my|hear|noise|ringing|all) ears?\b|\blever\b|\b(?:my"
        r"|their) arms\b",
    ),
)

_MOUNT_CARDS = (
    card(
        "mount",
        "ring",
        r"\b(?:ring|collar|loop|sleeve|hoop|circle|band)(?: that| which|,)?<3>(?:goes|go"
        r"|slips?|slides?|fits?|sits?|slid|went|pushes|pulls|clamps?|wraps?|sitting|going"
        rf"|slipped)<2>(?:over|round|around|on|onto|down|about)(?: top of)? <2>{_TUBE}\b",
        "a ring that goes round the tube",
    ),
    card(
        "mount",
        "ring",
        rf"\b(?:ring|collar|loop|hoop)<3>(?:slides?|slips?|threaded|goes)<2>over<2>(?:upright"
        rf"|{_TUBE})\b"
        r"|\b(?:slips?|slides?|slid|slipped) (?:down )?on (?:the "
        rf"|my )(?:\w+ ){{0,1}}?{_TUBE}\b|\b(?:slips?|slides?|slid|slipped|fits?|goes|went"
        r"|pushes|wraps?|hooks?)(?: on| right| down| snugly| all the way)? ?(?:over|round"
        rf"|around|onto)(?: the outside of)? (?:the |my |that |a )(?:\w+ ){{0,1}}?{_TUBE}\b",
        "what goes round the tube is a ring",
        unless=r"\bhose|\brefill|\bcap\b|\bwater\b|\bclip\b",
    ),
    card(
        "mount",
        "ring",
        r"\b(?P<asked>ring|collar)(?=\s?[?:=] ?(?:yes|no|none|y|n)\b)"
        r"|\b(?P<kind>ring|collar|sleeve)[- ](?:type|kind|style|mount(?:ed)?|one)\b"
        rf"|\bring (?:around|round|over|on|onto) (?:the |my )?{_TUBE}\b|\b(?:has|have|with"
        r"|got|is) (?:a |the )?(?:\w+ )?(?P<held>ring|collar)\b(?! (?:in|around|of"
        r"|inside) (?:the |my )?(?:bowl|toilet|water|stain))|\b(?:no"
        r"|not the) (?P<it>ring)\b",
        "a ring is how it holds",
        unless=r"\bwax\b|\bbowl\b|\bstain|\bseal ring\b|\bo-?ring\b|\bring size\b"
        r"|\block ?(?:ing)? ?ring\b",
    ),
    card(
        "mount",
        "pegs",
        r"\b(?:hook|clip|snap|hang|attach|fit|go|sit|hinge|pivot|connect|slip|mount|push"
        r"|pop|latch|click|slide|hold)(?:s|es|ed|ing)?(?: right| over| down| in| up"
        r"| held)?(?: on| onto| over| to| into| by)? (?:the |to |two |2 |these |those "
        r"|some |little |a |small |plastic |side |both |pair of "
        rf"|couple of ){{0,4}}{_PEGS}\b",
        "ears hook on pegs",
    ),
    card(
        "mount",
        "pegs",
        r"\b(?:two|2|little|small|the|plastic|side|those|pair of|couple of|broken|both|any"
        r"|no|has|have|with|on) (?:little |small |plastic |round |side "
        r"|tiny )?(?P<it>pegs?|hinge pins|knobs?|nubs|posts|pins|prongs|studs)(?: (?:on|at"
        r"|sticking|coming|either|each|for|that|to|one)\b|\W|$)",
        "pegs on the valve carry the seal",
        unless=r"\b(?:handle|door|seat|shower|faucet|stove)\b|\bpush ?pins\b",
    ),
    card(
        "mount",
        "pegs",
        r"\b(?:peg|pin)[- ](?:type|kind|style|mount(?:ed)?)\b|\bpegs\b|\b(?:pins?|pegs?"
        r"|posts?|knobs?|studs?) on (?:each|either|both) sides?\b",
        "the peg kind",
        unless=r"\b(?:toilet seat|seat hinge)\b",
    ),
    card(
        "mount",
        "clip",
        r"\b(?:clips?|clipped|snaps?|snapped)(?: it)?(?: right| straight)? (?:on|onto|in"
        rf"|into|to|around) (?:to )?(?:the |my )?(?:\w+ )?(?:base|side of the {_TUBE}"
        rf"|flush valve|valve|{_TUBE})\b|\b(?:held|attached|hangs|fastened|hinged|on"
        r"|with)(?: on)? ?(?:by|with|on|to)? (?:a|one|the) (?:\w+ )?clip\b|\bclip[- ](?:on"
        r"|type|kind|style)\b|\bhas (?:a|one) (?:\w+ )?clip\b",
        "a clip of its own valve",
        unless=r"\btoilet seat\b|\bchain\b|\brefill\b|\bhose\b|\bwater line\b|\b(?:video|paper)\b",
    ),
    card(
        "mount",
        "strap",
        r"\b(?:rubber |flexible |the |a )?(?:strap|tether)(?:ped|[- ](?:type|style"
        rf"|kind))?\b|\b(?:belt|tail)<2>(?:button\w*|round|around)<3>{_TUBE}\b",
        "a strap holds it",
        unless=r"\bchain\b",
    ),
    card(
        "mount",
        "wire",
        r"\blift ?(?:wires?|rods?)\b|\b(?:brass|copper|metal|threaded|upper|lower|long"
        r"|thin|screw|two|2|hooked) (?:rods?|wires?)\b|\b(?:rods?|wires?)<3>(?:screws?"
        r"|threads?|threaded|screwed)<2>(?:into|in|on|onto)\b|\b(?:ball|bulb|stopper|plug"
        r"|it)<4>(?:on|to|onto|from|by|with) (?:a |the |two |2 )?(?:\w+ )?(?:rods?"
        r"|wires?)\b|\bscrews? (?:in)?to (?:the )?(?:ball|bulb)\b|\bguide (?:arm"
        r"|bracket)\b",
        "a ball rises on a wire",
        unless=r"\bfloat\b|\bball ?cock\b|\bfill valve\b|\belectric|\bhandle arm\b|\bfloating\b",
    ),
    card("mount", "canister", r"\bcanister\b", "a canister's seal sits at its base"),
    card(
        "mount",
        "tower",
        r"\b(?:flush |tall |plastic |centre |center )tower\b|\btower[- ](?:style|type|kind"
        r"|valve|flush)\b|\b(?:a|the|this) tower\b",
        "a tower's seal sits at its base",
        unless=r"\bcup\b|\bfloat\b|\brides\b|\bfill (?:valve )?tower\b|\btower kit\b",
    ),
    card(
        "mount",
        "thread",
        r"\b(?:screws?|threads?|screwed|threaded) (?:on|onto|in"
        r"|into) (?:the )?(?:flush )?valve\b",
        "it screws on",
    ),
    card(
        "mount",
        "push",
        r"\b(?:pushes|pushed|presses|pressed|push|snaps)[- ](?:in|into|on"
        r"|onto)(?: fit)?(?: type| kind| style)?\b(?= (?:the (?:bucket|spout|drain|groove"
        r"|hole)|place|seal|gasket|type|kind))",
        "pushed into its groove",
    ),
)

_LIFT_CARDS = (
    card(
        "lift",
        "straight up",
        r"\b(?:lifts?|rises?|moves?|goes|comes|pulls?|raises?|slides?|pops?|lifted"
        r"|going)<3>(?:straight|right|vertically) ?(?:up(?:wards?)?(?: and down)?)?\b"
        r"|\bstraight (?:up|upward)\b|\bwhole (?:thing|tube|cylinder|piece|canister|tower"
        r"|centre|center|middle)(?: part)? (?:lifts|rises|moves up|goes up)\b",
        "balls and canisters rise straight",
    ),
    card(
        "lift",
        "hinged",
        r"\b(?:is |it's |are )?hinge[sd](?: on| at| open| up| to|\W|$)|\b(?:swings?|flips?"
        r"|flaps?|pivots?|folds?|flops?)<1>(?:up|open|back|on a hinge)\b|\b(?:has|on|with"
        r"|got) (?:a |the )?hinges?\b|\blike a (?:trap ?)?door\b"
        r"|\bflapp?er (?:with|on|has|and) (?:a|its|the) chain\b|\bchain and (?:a )?flapp?er\b",
        "flappers swing on a hinge",
        unless=r"\b(?:seat|lid|door|off|broke\w*) (?:the |its )?hinge|\bhinge[sd]? (?:broke|off)"
        r"|\bseat\b|\blid\b",
    ),
    card(
        "lift",
        "tilts",
        r"\b(?:tilts?|tips?|tipping|tilting)<2>(?:over|forward|back|up|sideways|out|its"
        r"|to)\b",
        "buckets tip their water out",
        unless=r"\b(?:toilet|tank) (?:tips|tilts)\b|\btips? (?:on|for|about)\b",
    ),
)

MOUNT: tuple[Card, ...] = (*_EAR_CARDS, *_MOUNT_CARDS, *_LIFT_CARDS)
