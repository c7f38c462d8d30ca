"""Ordinary English and trade words: never taken for a misspelled name.

A list of our own, of words that stand in letters about toilets. A listed name that is one of
them is read only where its place in the sentence shows that a name is meant.
"""

from __future__ import annotations

from functools import lru_cache

_LITTLE = """
a about above across actually after again against ago all almost alone along already also although
always am among an and another any anybody anyone anything anyway anywhere apart are around as
aside at away back be because been before behind being below beneath beside besides best better
between beyond both but by can cannot certain certainly could definitely did different do does
doing done down due during each either else enough especially even ever every everybody everyone
everything everywhere exactly except few finally first for former fourth from front further
generally get gets getting give given gives giving go goes going gone got gotten had half has have
having he hence her here hers herself him himself his hopefully how however i if immediately in
indeed inside instead into is it its itself just last lastly later latest least less like likely
little look lot lots made main mainly make makes making many may maybe me mean meant might mine
more most mostly much must my myself nearly need neither never nevertheless new next no nobody none
nor normally not nothing now nowhere obviously of off often ok okay old on once one ones only onto
or originally other others otherwise ought our ours ourselves out outside over overall own
particular partly per perhaps please plenty possible possibly pretty previous previously probably
properly quick quickly quite rather really recent recently same second see seem seemingly seems
several shall she should similar simple simply since so some somebody somehow someone something
sometimes somewhat somewhere soon still stuff such sure surely than that the their theirs them
themselves then there therefore these they thing think third this those though three through
throughout thru thus till to today together tomorrow tonight too totally toward towards twice two
under underneath unfortunately unless unlike until up upon upper upside us use used useful using
usual usually various very via was way we well were what whatever when whenever where wherever
whether which whichever while who whoever whole whom whose why will with within without wonder
would yes yesterday yet you your yours yourself aren't isn't wasn't weren't don't doesn't didn't
can't couldn't won't wouldn't shouldn't haven't hasn't hadn't aint arent cant couldnt didnt doesnt
dont hadnt hasnt havent isnt ive im its lets shouldnt thats theres theyre wasnt wont wouldnt youre
youve whats dunno gonna wanna kinda sorta
"""
_NUMBERS = """
zero four five six seven eight nine ten eleven twelve thirteen fifteen sixteen twenty thirty forty
fifty sixty seventy eighty ninety hundred thousand single double triple dual couple pair dozen half
quarter eighth eighths sixteenth inch inches foot feet millimetre millimeter centimetre centimeter
metre meter gallon gallons litre liter litres liters ounce pound pounds dollar dollars bucks cents
percent number numbers numeral digit digits amount count size sizes sized length width height depth
diameter radius measure measured measures measuring measurement measurements ruler tape calliper
caliper calipers year years month months week weeks day days hour hours minute minutes seconds
moment morning evening afternoon night time times date dates dated decade decades century eighties
seventies nineties sixties fifties twenties early late mid approx approximately around roughly
january february march april june july august september october november december monday tuesday
wednesday thursday friday saturday sunday jan feb mar apr jun jul aug sept oct nov dec spring
summer autumn fall winter christmas easter weekend holiday
"""
_TRADE = """
toilet toilets commode loo lavatory privy bathroom bathrooms washroom restroom ensuite powder tank
tanks cistern bowl bowls seat seats lid lids base pedestal rim flush flushes flushed flushing
flusher flushometer flapper flappers flap flaps ball balls seal seals sealing sealed gasket gaskets
washer washers ring rings disc discs disk disks rubber plunger plug stopper stoppers valve valves
fill filler float floats overflow tube tubes pipe pipes piping tower towers canister canisters
cartridge diaphragm drain drains drained drainage drop drip drips dripping dribble trickle leak
leaks leaky leaked leaking leakage hiss hissing whistle gurgle run runs running ran refill refills
refilling ghost phantom slow slowly weak strong water waters supply shutoff stopcock pressure level
levels line lines handle handles lever levers trip button buttons push pull chain chains strap
straps clip clips hook hooks link links wire rod rods arm arms ear ears peg pegs pin pins post
posts hinge hinges hinged mount mounts mounted bolt bolts nut nuts screw screws thread threads
threaded bracket brackets spud elbow tee fitting fittings adapter adaptor connector coupling hose
shank spring springs cap caps cup cups cone lip lips groove edge edges surface bead hole holes
opening openings outlet inlet throat part parts piece pieces spare spares kit kits assembly set
sets unit component components repair repairs repaired replace replaced replaces replacing
replacement replacements install installs installed installing installation installer fit fits
fitted fix fixed fixes change changed changes swap swapped adjust adjusted adjusting adjustable
adjustment tighten tightened loose loosen remove removed removing clean cleaned cleaning cleaner
scrub scrape sand sanded grease silicone vinyl plastic brass bronze copper chrome chromed nickel
steel stainless iron metal metallic porcelain ceramic china vitreous enamel glass wooden wood foam
cork wax putty tape glue caulk sealant bleach chlorine vinegar tablet tablets chemical chemicals
dye colouring food mineral minerals lime limescale scale scaling calcium rust rusty rusted corroded
corrosion crud slime slimy mould mold moulded molded moldy warp warped worn wear crack cracks
cracked broken broke break bent stiff hard hardened soft softened brittle blister blistered swollen
shrunk stretched torn ripped perished rotten rotted decayed crumbling crumbled melted stuck sticks
sticky sticking catch catches caught jammed clog clogged blocked block maker makers manufacturer
manufacturers brand brands branded company companies firm model models series style styles type
types kind kinds sort make makes version design designs line range genuine original originals
generic universal standard regular normal common basic classic deluxe premium compact elite plus
ultra mini lite modern traditional antique vintage retro elongated round rounded oval square flat
tall short high low close coupled wall hung hanging floor corner concealed rear bottom top side
sides left right centre center middle upstairs downstairs basement attic hall hallway master guest
kids kitchen laundry garage cabin cottage house home homes apartment condo condominium flat rental
rented office school church hotel motel restaurant building built plumber plumbers plumbing
handyman contractor landlord tenant owner previous store stores shop shops hardware warehouse
counter supplier supply dealer online website internet catalog catalogue page picture pictures
photo photos image attached attachment drawing diagram email mail message letter phone call called
calling calls number order orders ordered ordering stock stocked item items product products price
prices priced pricing cost costs shipping shipped ship ships delivery deliver delivered receipt
refund return returned returns warranty invoice account card payment pay paid stamp stamps stamped
stamping mark marks marked marking markings engraved embossed printed print imprinted cast casting
label labels labelled sticker stickers logo letters lettering word words writing written wrote read
reads reading say says said code codes serial patent patented cover covers underside face interior
exterior efficient efficiency saver saving saver economy gravity pressurized assist assisted siphon
siphonic jet jets trap trapway rinse tipping tilting bucket insulated liner lined hoist stock
pottery sanitary sanitaryware fixtures fixture ware bath baths basin sink sinks shower tub tubs
bidet urinal faucet faucets tap taps heater boiler sprinkler septic sewer
"""
_PEOPLE = """
hello hi hey dear sir madam maam ladies gentlemen folks guys team staff greetings thanks thank
thankyou appreciate appreciated regards sincerely cheers respectfully yours truly kind kindly best
wishes mr mrs ms miss dr friend friends neighbor neighbour neighbors wife husband spouse mom mum
mother dad father son daughter brother sister grandma grandpa grandmother grandfather aunt uncle
nephew niece kid baby child children family boss guy man men woman women lady person people
somebody customer customers client service support help helps helped helpful helping advice advise
advised assist assistance question questions answer answers asked asking ask tell tells telling
told talk talked know knows known knew idea ideas guess guessing believe believed thought thinking
thinks feel feels understand hope hoping hoped want wants wanted wanting wish love loved loves hate
happy glad sorry afraid worried annoying annoyed annoys crazy mad nuts desperate confused puzzled
stumped curious interested able unable unsure certain confident correct correctly wrong mistake
incorrect exact match matches matched matching matter matters problem problems issue issues trouble
troubles
"""
_VERBS = """
add added adds allow allows appear appears apply arrive arrived bang became become becomes began
begin begins bring brought build burn buy buying bought carry carried carries cause caused causes
check checked checking checks choose chosen close closed closes closing come comes coming compare
compared complain complete completely confirm connect connected consider contact continue continues
cover covered cut cuts deal decide decided describe described determine die died dig disconnect
drive drop dropped dry dried dump emptied empties empty end ended ends expect expected explain fail
failed fails failing fall fallen falling falls fell felt figure figured fill filled filling fills
find finding finds finish finished flip flipped flow flows flowing follow followed force forced
forget forgot found freeze grab grabbed guarantee handle happen happened happening happens hang
hear heard hears hit hold holding holds include included includes inherit inherited invest jiggle
jiggled jiggling keep keeping keeps kept kick kill lay lead learn leave leaves leaving left let
lets lie lift lifted lifting lifts list listed listen live lived lives living load lock locate
located look looked looking looks lose losing lost lower lowered manage managed mention mentioned
miss missing mix move moved moves moving noise noises noisy notice noticed obtain occur occurs
offer offered offers open opened opens operate overflowed peel pick picked place placed plan point
pointed points pop popped pour prefer press pressed prevent prove provide pump purchase purchased
purchasing put puts putting raise raised reach realize receive received recognise recognize
recommend recommended reference refuse register remain remains remember remodel remodeled renovate
renovated request require required requires reseat rest rise rotate rub rubbed save saved search
searched searching sell selling sells send sending sends sent separate serve settle shake shape
shaped shapes show showed showing shown shows shut shuts sit sits sitting slide slip slips slipped
slid smell smells snap snapped sold solve solved sound sounds speak specify specified spend spent
spin spray squeeze stand standing stands start started starting starts stay stays step stop stopped
stopping stops store suggest suggested suggestion suit suitable suits suppose supposed surround
suspect take taken takes taking tear test tested testing throw took touch tried tries try trying
turn turned turning turns twist twisted type unclog understand unscrew update upgrade upgraded view
visit wait waiting walk wash washed waste wasted wasting watch watched wiggle wiggled wipe wiped
work worked working works worry worth wrap
"""
_LOOKS = """
white whitish black blue red green yellow pink grey gray brown beige bone biscuit almond ivory
cream avocado harvest gold golden silver tan peach rose purple violet orange maroon burgundy teal
turquoise navy mint colour color coloured colored colours colors light lighter dark darker pale
bright clear transparent translucent shiny dull faded stained dirty filthy gross nasty ugly nice
pretty beautiful lovely fine fancy cheap cheaper expensive costly good great bad terrible horrible
awful poor perfect excellent decent better worse worst big bigger biggest large larger largest huge
giant small smaller smallest tiny thick thin narrow wide wider long longer longest shorter heavy
full partial partially fresh older oldest newer newest newly young ancient aged age ages ageing
aging current present existing recent extra spare special specific specifically typical odd oddly
weird strange unusual unknown unmarked illegible unreadable readable visible invisible legible
clearly faint faintly barely hidden rubbed unclear available unavailable obsolete discontinued
outdated worthless useless ready easy easily easier difficult difficulty simple complicated
constant constantly continual continually continuous continuously random randomly occasional
occasionally frequently regularly intermittent daily nightly weekly silent quiet quieter loud
louder safe safety dangerous whole entire entirely total local national international foreign
domestic public private residential commercial industrial economical professional important main
major minor general
"""
_PLACES = """
american america usa states united canada canadian mexico mexican british britain england english
scotland wales ireland irish europe european germany german france french italy italian spain
spanish japan japanese chinese korean korea taiwan india indian thailand vietnam turkey turkish
brazil australia australian victorian edwardian georgian colonial federal north northern south
southern east eastern west western town city village county country state street avenue road lane
drive court boulevard suite floor room rooms building block river lake hill valley island beach
mountain garden yard world place area zone address zip code usps
"""
_MORE = """
don doesn didn isn wasn weren couldn wouldn shouldn haven hasn hadn ain aren mustn needn property
kettle thimble able abuse accept access accident accurate ache across act action active actual
address advance afford agree ahead air alarm alike alive amazing angle angry apologize approach
argue article assume assumed assuming attach attempt attention auto automatic average aware awhile
awkward bag balance bare bargain barrel basket battery bead bear beat bed bell belt bend benefit
bet bill bird bit bite blame blank bleed blind blow blown board boat body boil bold book boot bore
bored boring born borrow bother bound box boxed boxes boy branch brand bread breath brick bridge
brief brush bubble budget bug built bulb bulge bump bunch burst bus bush business busy butter cable
cake camp cancel candle capital car care careful carefully carpet case cash cat ceiling cent chair
challenge chance channel charge chart chase checkout chip choice circle circular claim clamp class
click climb clock cloth clothes cloud club coat coffee coil cold collar collect combination
combined comfort comment compatible complaint compression concern condition confusing construction
contain contains content control cook cool copy cord core corn costs cotton course crap crash cross
crowd curb cure curve curved custom cycle cycles damage damaged damp data dead decor deep defect
defective degree delay depend depends desk detail details develop device dial difference dimension
dimensions dip direct direction directions dirt discount dish display distance dog door doubt draft
drag draw drawer dream dress drill drink drum duck dust dustpan earth eat effect effort eight
electric element email emergency energy engine enjoy entrance environment equal equipment
equivalent error even event evidence exactly example exchange excited exist experience expert
express extend extension extreme eye fact factory fair faith family fan far farm fast faster fault
faulty favor favour fear feature fee feed female fence fiber field fight file film filter final
finger fingers fire fish five flag flange flared flash flex flexible flipping flood flooded
flooding flower fluid fly fold folded forever fork form former forward frame free friendly frost
frozen frustrated frustrating fun function functional funny furniture fuzzy game gap gas gate gear
gentle gift girl glove gloves grade grain grand grass grateful gray grip ground group grow guard
guide gun hair hammer hand handy hat head heads health heart heat heavy helper hidden hint history
hobby hollow honest honestly honor hope horse hospital hot huge human hundred hunt hurry hurt ice
ideal identical identify identified identification identifying impossible impression improve index
indicate indicated information info initial inner input insert inserted inspect inspection
instruction instructions insurance intact interest interior introduce investigate item job join
joint joke judge juice jump kept key keys king knee knife knob knock knot lack ladder land lamp
large laser latch laugh law layer lazy leaf lean leather ledge leg legs lesson lever library life
limit limited linen list lit litter load loan location lodge logic lonely loop loud luck lucky
lunch machine magic magnet maintenance male map margin market mask mass mat material materials math
maximum meal meanwhile mechanism mechanical media medium meet meeting member memory mercury mess
message method mile milk mill mind minimum mirror model moisture money mortgage motion motor mouth
movie multiple muscle music mystery nail name named names narrow nature near nearby nearest neat
neck needle nervous net noon nose note noted notes novel object offset oil operation opinion option
options order organize outer overnight overseas owe pack package packaging packed packet pad page
paint painted pan panel paper paragraph park party pass passed past path pattern pause peace peak
pen pencil pet petal petroleum piano picky pile pinch pink pit pitch plain plan plane plant plate
play player plenty pliers pocket pool popular portion position positive pot potential power
practical practice pray precise prepare press price pride prime print prior prize pro process
produce produced professional profile program project promise proof proper protect pry public pure
purpose puzzle quality quantity queen quote rack radio rail rain rate ratio raw ready real reality
reason reasonable recall record recycle reduce reduced reducer regulator related release reliable
relief rely rent report reset residue resist result results rich ride ridge ridiculous rig rigid
rip risk rock roll roof root rope rough rubbery rude ruin ruined rule rush sad salt sample scale
scratch scratches screen script sea season seated secret section secure seen segment senior sense
serious seriously shade shadow shaft shame share sharp shed sheet shelf shell shift shim shine
shirt shock shoe shoot shore shot shoulder shower sick sight sign signal silly skill skin skip sky
sleep sleeve slide slight slightly slit slop slot smart smooth snag snake snow snug soak soap
social society solid solution sorry source space speed spell spigot spill spiral spirit split
sponge spot spout spread squeak squeal stable stage stain stair stairs stake stale star stare
station steady steam stem stick stone stool story straight strain strainer stream strength stress
string strip stroke stubborn student study stupid style subject success suck sucks sudden suddenly
sugar sun super surprise surprised survey sweet swing switch swivel symptom system table tail tale
talk task taste tax tear technical temperature temporary tend term terms terrific text thankful
theory thermal ticket tidy tie tight tighter tightly tile tilt tip tired tiring tone tongue tool
tools tooth torque town toy track trade traffic train trash travel tray treat treated tree trick
tricky trim trouble truck true trust truth tug tuna tune tunnel turned twin ugly unable uncertain
uneven unique university upset urgent valuable value vapor variety vendor vent vertical vertically
vessel video voice volume wagon wake warm warn warning wasteful wave wax wealth weather web wedge
weekly weigh weight weld welcome wet wheel whenever wild willing win wind window wine wing winter
wise wonderful woods wool workshop wound wrench yell younger zinc ada gpf lpf pvc abs psi diy usa
uk hoa epa led aka etc asap faq fyi pdf oem sku upc qty pcs pkg
"""
_PARTS_OF_WORDS = ("", "e", "y")
_ENDINGS = ("'s", "s", "es", "ed", "d", "ing", "er", "ers", "r", "rs", "ly", "y", "ies", "ied",
            "ier", "est", "able", "ness", "less", "ful", "ish", "like")  # fmt: skip
_LOOKS_ENGLISH = ("able", "ible", "ing", "ed", "ly", "less", "ful", "ness", "tion", "ment", "ous",
                  "ish")  # fmt: skip

TRADE: frozenset[str] = frozenset(_TRADE.split())
WORDS: frozenset[str] = frozenset(
    (_LITTLE + _NUMBERS + _TRADE + _PEOPLE + _VERBS + _LOOKS + _PLACES + _MORE)
    .replace("'", "")
    .split()
)


@lru_cache(maxsize=1 << 16)
def ordinary(word: str) -> bool:
    """Whether a lower-case word is an ordinary one, or a form of one ('leaked', 'fittings')."""
    if word in WORDS:
        return True
    for ending in _ENDINGS:
        stem = word.removesuffix(ending)
        if stem == word or len(stem) < 3:
            continue
        if any(stem + more in WORDS for more in _PARTS_OF_WORDS):
            return True
        if stem[-1] == stem[-2] and stem[:-1] in WORDS:
            return True
    return False


def reads_as_english(word: str) -> bool:
    """Whether a word outside the list still has the build of one ('indecipherable')."""
    return ordinary(word) or (len(word) > 5 and word.endswith(_LOOKS_ENGLISH))
