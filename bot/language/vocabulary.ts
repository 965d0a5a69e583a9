const words = (list: string): ReadonlySet<string> => new Set(list.split(/\s+/));

/** Short words that are corrected only where two neighbouring letters changed places: "teh", "hwo", "otu". */
export const SHORT_WORDS = words(`the how out and was not are for now did get hot low has had will with what that this last from been when snow wind roof door soil bed beds
  fan fans heat vent kale leek pea peas dead fine done open shut help make take high week look over went gone hole tear rip keep left need
  want tell give send time warm film tube pipe fuel tank wall gas max min lit put run set day log live lost just some much many here only then
  does good`);

/**
 * Words that the rules speak of and that are corrected when they are mistyped. Short or rare names of devices are not among
 * them: "quit" is no quilt and "tore" no tote; and no word that is a number.
 */
export const VOCABULARY = words(`tonight tomorrow yesterday today evening morning afternoon overnight midnight night nights weekend week tuesday wednesday thursday friday saturday sunday monday
  forecast weather freeze freezing frost frosty frozen coldest warmest lowest highest minimum maximum cold colder temperature thermometer reading
  readings degrees minus below above under inside outside
  greenhouse tunnel polytunnel hoophouse polyhouse soil ground shade sunshine covers cover covered covering uncovered blanket blankets fleece curtain
  curtains heater heaters heating vents vent drums barrels
  compost plastic insulation propane electricity electric power blower closed close opened switched turned started running forgot forgotten already
  everything anything nothing
  survive survived surviving alive dead fine damage damaged burnt wilted survives harvest harvested picked lettuce spinach
  message messages messaging settings history export spreadsheet download delete unsubscribe stop stopped please thanks thank sorry mistake
  correction actually instead
  should would could what when where which about does will with from have there their they that this because before after think happens suppose
  without another layer layers build
  celsius fahrenheit accurate improvement measurement recommend question change switch difference warmer record
  installed install second third finished building replaced insulated bought stones bricks bottle empty working broken brushed cleared melted ripped
  window windows plants garden through though might probably weeks again never still right quite leaves reset ordered neighbour thought pushed
  dropped falling climbed`);
