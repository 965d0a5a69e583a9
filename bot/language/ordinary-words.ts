/**
 * Everyday words that a misspelling must never be corrected into or out of: many lie one or two letters from a crop or
 * a device ("certain" and curtain, "paper" and pepper, "chilly" and chilli, "heather" and heater).
 */
export const ORDINARY_WORDS: ReadonlySet<string> = new Set(
  `bed beds shade shaded low paper papers chilly chill chills certain heather later layers lower lowest water waters well wall wells fill filled fell felt full film firm
  file tub tubs tuber tubers cube basic basis basin chart charts charge change changed chance share sharp apply applied supply cheery cheer peace
  place places plate plane
  plant plants planted planting reach beach patch each pitch letter letters latter better bitter batter butter matter turned turning turns return
  carpet garage carry
  carried cabin party partly barely early nearly really clover lover over oven even ever event events seven store stores story storm storms started
  start starts stars state
  stated score stand stands steady still stove snow snowy show shown slow slowly spring sprint string strong raining rain rains ranch range great
  grade grass green grey
  ground group grow grower growing grown grew union minion mind mine mint main many mail meant mean means meat melt metal beams beat beats beating
  been bear beer leak leaks
  leaking leaky leap lead leaf leaves leave left lift less lesson lesser least last lost loss lots peak people person perhaps potted pots posts post
  past paste part parts
  sage stage same some someone soon sorry sort sure surely sun sunny sunk sunrise sunset funnel tunnel tunnels final finally fine finer find found
  fence fences dense sense
  cost costs coast coat coats cold colder coldest cool cooler cooled code come coming comes corn corner corners born horn worn worth work works
  worked working word words
  world worry worried worse worst first frost frosty froze frozen freeze freezes freezing free fresh from front fruit heart hearts heard hear heat
  heats heated heavy heaven
  hello help helps helped helping here hers herbs herb high higher hight hide hill hills hold holds hole holes home hope hopes hoping hoop hoops hose
  house houses hour
  hours hang hand hands handle happen happened happy hard harder hardly have having just keep keeps kept kind king kelp know knew known kill killed
  large light lights like
  liked likely likes line lines list listed listen little live lived living local long longer look looks looking looked love loved make makes making
  made march marked
  market maybe message middle might miss missed moment money month months moon more morning most mostly mouse move moved much must name named near
  need needs needed never
  next night nights none noon normal north northern note nothing notice number often once only open opened opens order other others ought outer paid
  pain paint panel phone
  pick picked picking picks pink plan plans play please plus point pool poor power pretty price probably pull pulled push pushed quick quickly quiet
  quite rather read ready
  reading reads reason record right rise rising road roof room root roots rose round rows said sale salt sand save saved says season seat second seed
  seeds seem seems seen
  sell send sensor sent serve shed shelf shelter shift shop short should shut side sides sight sign silly since sitting size skip skipped sleep small
  smell smoke soft soil
  solid something south space spade spot spots spray spread square stack staff station stay stayed steel step stick stop stopped street stuff such
  suggest summer super
  table take taken takes taking talk tall tank taste teach team tell tells temper tender term test text than thank thanks that their them then there
  these they thick thin
  thing things think this those though thought three through throw tied tight till time times tiny tips tired today together took tool tools tops
  total touch touched
  towards town tray trays tree trees tried trouble true trust truth turn under undone unit until upper used useful uses using usual usually valley
  value very view visit
  wait waiting wake walk want wants warm warmer warmest warning wash wasted watch week weekend weeks weird went were west what when where which while
  white whole wide wife
  will wind winds window windows windy winter wire wise wish with within without wonder wood wool yard year years yellow young your yours zone about
  above across after
  again against agree ahead alive almost alone along already also always among amount another answer anyone anything area around arrive asked away
  back badly bags bare bank
  barn based basket became because become before began begin behind being believe below bench beside best between beyond biggest bird black blank
  blow blown blew blue board
  boat body boil bone book both bottom bought bowl boxes boys branch bread break bring broke broken brother brown brush bucket build building built
  burn burned burnt busy
  call called calls calm came camp cannot care careful case cases catch cause cheap check checked chicken child choice choose city claim clean clear
  cleared clearing clock
  close closed closer closes cloth clothes cloud clouds cloudy common compare complete concern contact cook copy correct could count country couple
  course crack crash crop
  crops cross crowd cute daily damage damaged damp dark date dawn days dead deal dear death decide deep degree degrees delay depend dial didn died
  dies diff different
  dinner direct dirt dirty dish does doing done door doors double doubt down dozen draft drag drain draw drawn dream dress drew drink drip drive drop
  dropped drops dropping
  drove dry dull during dust duty earth ease east easy edge edges edition effect effort eight either else email empty end ended enjoy enough enter
  entire equal error
  evening every everyone everything exact except excuse expect explain extra eyes face fact fail failed fair fairly fall fallen falls family farm
  farmer fast favor fear
  feed feel feeling feels feet field fight figure fire fish five fixed flat floor flow flower flowers fly fold folks follow food foot force forest
  forget forgot form four
  frame fridge friend fuel funny future game garden gate gave gets getting girl give given gives giving glad glass goes going gold gone good goodness
  got guess gutter guys
  half hail hall hate head health sister hit hits felon demon opinion leather feather feathers stares stored honest shovel shovels poled pipes wiper
  lemonade mustered
  custard radius clothe curtail inform insist survey service surprise kayak coral carol fans venue tore torn quit tote blower towers tower layered
  sheep sheer steer stony
  drugs drunk drama vest bale bales plaster elastic compose composed company blanked harvester recovered discovered hovered insulated weathered
  whether lowered walls waste
  marjorie stoned compass harness settled setting options server pear pears drill inflation speaks longest popped banked limp lies hotter tons mins base
  purely curves curl headers header core bash connection filter shell latest contain contains engine binding graph graphs bugs wrong
  switch sending char compat convert converts sparse container contained proper converted typos type types typed lazy collection helper helpers
  caller remain remains
  minimal minima sorted sessions session ending endings learns pause paused compact cheese counter life lose loose raised raise raises engines seeing
  brackets bracket boom
  flowing watcher commander swap spell spells vice babel marker cope scratch button packing driver driven grant grants poll lite cone focus bulk
  routine propose hiding
  holding fits seeking minus feeding shot bundling subscribed isolation letting tolerate outline accuracy purpose prepare prepared chat silver finger
  lady red corrected
  connect connected collect insure handy horse basils bails coal crab cress dell doll gas gain gear lamb mice mulch nap oil opal parcel pants pans
  pail pad pods pod rot
  rock rocks rope sack soup stew tart ten terms toast tomb trap twin vane vein wheat yarn cable cellar center certainly chapel cinder circle clay
  cleaner clever coffee
  collar colony column comfort command comment commit complain compost computer concrete condition conditions consider cottage cotton cousin cracker
  cradle creek critical
  crown cruel crystal culture cupboard current custom cycle dairy danger dealing decent defend deliver demand density depth desert detail device
  differ digging digital
  discount ditch diverse dollar dragon drying dusk eager eagle earlier editor effective eggs electric eleven enormous entry estimate eventual examine
  example exchange
  expand export express fancy fault feature fiber fiddle fifteen fifty fifth fighting figured figures filling fireplace fishing flag flame flash
  flavor flight flooded flour
  fluid flush foam folded former fortune fossil fountain fraction fragile freight frequent fresher friday frosting fruits gallon gentle ginger glove
  glow goat golden gravel
  gravity greens greenery grocer grocery guard guide habit hammer handful hanging hardest harmed haul hauling hawk hazard headed healthy hedge hence
  hollow honey hook
  horizon horrible humid humidity hungry hurry icicle ideal idea ideas image impact improve inch include included increase indeed indoor inner
  install installed instant
  interest invite island items jacket joint journal journey jump kitchen knife ladder landing latch laundry leaning ledger legal lettered level lever
  library lifted limit
  linen liquid liter litter lock locked lodge logged logic lonely loop lucky lunch magic manage manner manual margin mason master measure medal media
  medium memory mention
  merely method midday mild minute mirror mixed mixing model modern moist moisture monitor monster motion motor mount mountain muddy mulched nails
  narrow nasty natural
  nature neat neither nephew nervous network neutral nice noise notes noted novel nurse oak object obvious ocean offer office older opening operate
  option oral orbit origin
  outage overcast owner oxygen package packet painful painted palace pallet pallets pantry parade pardon parent parking parlor parse parsed partial
  passed passing patches
  path patient pattern payment peaceful peanut pebble penny percent perfect permit petal petrol phase photo piano picture pierce pile piles pillow
  pilot pipe pizza planet
  planter plastered plenty plot plow plug plugged pocket poison polish polite ponder porch portion positive postage pouch pound powder prefer present
  press pressure presume
  prevent previous pricey primer prince print prior private problem process produce product profit project promise propped protect protected protein
  provide public pulse
  pump pumpkinseed pupil purse puzzle quarter quest question quote rabbit radio rail rained ramp random rapid rarely rate ratio razor react rear
  recent recorded records
  recover reduce refill reflect region regret regular relax relay relief rely remind remote remove removed render rent repair repeat replace reply
  report rescue reset rest
  restore result retire review reward ribbon rid ridge ring ripe ripped river robust rocky roll rolled rolling rotten rough routed royal rubber ruin ruined rural rusty`.split(/\s+/),
);
