import { HEATER_KINDS, LITRES_PER_US_GALLON, METRES_PER_FOOT, WATTS_PER_BTU_PER_HOUR, type Greenhouse, type HeaterKind } from '../../engine/index.js';
import type { PlainLength } from '../features/describe/file-quantities.js';
import type { DraftFile, Line, SizeDraft } from '../features/describe/state.js';
import type { SummaryView } from '../features/describe/view.js';
import { temperature } from './temperature.js';

const SQUARE_FEET_PER_M2 = 1 / METRES_PER_FOOT ** 2;
const CUBIC_YARDS_PER_M3 = 1 / (27 * METRES_PER_FOOT ** 3);
const CFM_PER_M3_PER_H = 1 / (60 * METRES_PER_FOOT ** 3);
const INCHES_PER_METRE = 39.3701;
/** Plates give heating power in hundreds of BTU/h. */
const BTU_STEP = 100;
/** Shorter lengths are spoken of in inches and centimetres. */
const SHORT_M = 0.5;

const short = (value: number, decimals = 1): string => String(Math.round(value * 10 ** decimals) / 10 ** decimals);
const round = (value: number): string => String(value >= 20 ? Math.round(value) : Math.round(value * 10) / 10);

const feet = (metres: number): string => `${short(metres / METRES_PER_FOOT)} ft`;
const inches = (metres: number): string => `${short(metres * INCHES_PER_METRE)} in`;
const both = (primary: PlainLength, inFeet: string, inMetres: string): string => (primary === 'ft' ? `${inFeet} (${inMetres})` : `${inMetres} (${inFeet})`);

/** A length in the grower's unit with the other behind it. */
export const lengthWords = (metres: number, primary: PlainLength): string => (metres < SHORT_M ? both(primary, inches(metres), `${short(metres * 100)} cm`) : both(primary, feet(metres), `${short(metres)} m`));

/** "20 by 48 ft (6.1 by 14.6 m)" */
export function lengthsWords(metres: readonly number[], primary: PlainLength): string {
  const join = (unit: string, of: (value: number) => string): string => `${metres.map(of).join(' by ')} ${unit}`;
  return both(primary, join('ft', (value) => short(value / METRES_PER_FOOT)), join('m', (value) => short(value)));
}

const areaWords = (m2: number, primary: PlainLength): string => both(primary, `${round(m2 * SQUARE_FEET_PER_M2)} sq ft`, `${round(m2)} m2`);
const volumeWords = (m3: number, primary: PlainLength): string => both(primary, `${short(m3 * CUBIC_YARDS_PER_M3)} cu yd`, `${short(m3, 2)} m3`);
const litresWords = (litres: number, primary: PlainLength): string => both(primary, `${round(litres / LITRES_PER_US_GALLON)} US gal`, `${round(litres)} L`);
const airflowWords = (m3PerH: number, primary: PlainLength): string => both(primary, `${round(m3PerH * CFM_PER_M3_PER_H)} cfm`, `${round(m3PerH)} m3/h`);
const powerWords = (watts: number, withBtu: boolean): string => `${round(watts)} W${withBtu ? ` (${Math.round(watts / WATTS_PER_BTU_PER_HOUR / BTU_STEP) * BTU_STEP} BTU/h)` : ''}`;

const SHAPE_WORDS = { 'half-round': 'half-round hoops', gothic: 'gothic (pointed)', gable: 'gable roof', 'lean-to': 'lean-to' } as const;
const FILM_WORDS = { standard: 'standard film', thermal: 'thermal film', 'ir-barrier': 'IR film', glass: 'glass', 'twin-wall': 'twin-wall panels' } as const;

/** What was not said, and is counted on until it is. */
const guess = (said: unknown, words: string): string => (said === undefined ? `${words} (my guess)` : words);

const list = (words: readonly string[]): string => (words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`);

type Bed = Greenhouse['beds'][number];
type Fan = NonNullable<Greenhouse['fan']>;
type FileFan = NonNullable<DraftFile['fan']>;

const coverWords = (cover: NonNullable<Bed['cover']>): string => {
  const one = cover.kind === 'fabric' ? `fabric of ${round(cover.weight)} g/m2` : 'a film tunnel';
  const second = cover.second === undefined ? '' : cover.second.kind === 'fabric' ? `, with fabric of ${round(cover.second.weight)} g/m2 over it` : ', with a film tunnel over it';
  return `${one}${second}`;
};

function coversWords(beds: readonly Bed[]): string | null {
  const covered = beds.filter(({ cover }) => cover !== undefined);
  if (covered.length === 0) return null;
  const kinds = [...new Set(covered.map(({ cover }) => coverWords(cover!)))];
  return kinds.map((kind) => `${kind} for ${list(covered.filter(({ cover }) => coverWords(cover!) === kind).map(({ name }) => name))}`).join('; ');
}

const bedWords = ({ name, crops, area }: Bed, primary: PlainLength): string => {
  const names = crops.map((crop) => (typeof crop === 'string' ? crop : `${crop.crop}${crop.hardiness === undefined ? '' : ` (${crop.hardiness})`}`));
  return `${name}${area === undefined ? '' : `, ${areaWords(area, primary)}`}: ${names.length > 0 ? names.join(', ') : 'nothing yet'}`;
};

const SUPPLY_WORDS = { mains: 'on the mains', battery: 'on a battery', sun: 'on sun alone' } as const;
const fanWords = (fan: Fan, said: FileFan | undefined, primary: PlainLength): string => `${airflowWords(fan.airflow, primary)}, ${guess(said?.power, `${round(fan.power)} W`)} ${guess(said?.supply, SUPPLY_WORDS[fan.supply])}${fan.battery === undefined ? '' : ` of ${round(fan.battery)} Wh`}`;

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

function storesWords({ drums, stones, stoneBox }: Greenhouse, { file, primary }: SummaryView): string | null {
  const parts = [
    ...drums.map((group) => `${plural(group.count, 'vessel')} of ${litresWords(group.litres, primary)}${group.touching ? ', touching' : ''}${group.sunny ? '' : ', in the shade'}`),
    ...stones.map((heap) => `${volumeWords(heap.volume, primary)} of ${heap.kind}${heap.blackened ? ', blackened' : ''}${heap.sunny ? '' : ', in the shade'}`),
    ...(stoneBox ? [`a stone box of ${volumeWords(stoneBox.volume, primary)} under ${areaWords(stoneBox.glazed, primary)} of glass${stoneBox.fan ? `, fan ${fanWords(stoneBox.fan, file.stoneBox?.fan, primary)}` : ''}`] : []),
  ];
  return parts.length === 0 ? null : parts.join('; ');
}

function airWords({ tubes, fan }: Greenhouse, { file, primary }: SummaryView): string | null {
  const parts = [
    ...(tubes ? [`${guess(file.tubes?.count, plural(tubes.count, 'tube'))}, ${lengthWords(tubes.length, primary)} long, ${guess(file.tubes?.diameter, `${lengthWords(tubes.diameter, primary)} wide`)}, ${guess(file.tubes?.depth, `${lengthWords(tubes.depth, primary)} deep`)}, fan ${fanWords(tubes.fan, file.tubes?.fan, primary)}`] : []),
    ...(fan ? [`a stirring fan, ${fanWords(fan, file.fan, primary)}`] : []),
  ];
  return parts.length === 0 ? null : parts.join('; ');
}

const HEATER_WORDS: Readonly<Record<string, string>> = { electric: 'electric', 'wood-stove': 'wood stove', candles: 'candles', 'vented-propane': 'propane with a flue', 'unvented-propane': 'propane without a flue', 'vented-kerosene': 'kerosene with a flue', 'unvented-kerosene': 'kerosene without a flue', 'vented-gas': 'gas with a flue', 'unvented-gas': 'gas without a flue' };

function heaterWords({ heater }: Greenhouse, { primary, temperatureUnits }: SummaryView): string | null {
  if (!heater) return null;
  const running = heater.on ? `, on${heater.set === undefined ? '' : ` at ${temperature(heater.set, temperatureUnits)}`}` : '';
  return `${HEATER_WORDS[heater.kind]}, ${powerWords(heater.power, HEATER_KINDS[heater.kind].combustion !== 'none' && primary === 'ft' && heater.kind !== 'candles')}${heater.thermostat || heater.kind === 'candles' || heater.kind === 'wood-stove' ? '' : ', no thermostat'}${running}${heater.price === undefined ? '' : `, ${heater.price} a unit`}${safetyWords(heater)}`;
}

function safetyWords({ kind, safetyRead }: { kind: HeaterKind; safetyRead: boolean }): string {
  const { combustion } = HEATER_KINDS[kind];
  if (combustion === 'none') return '';
  if (combustion === 'unvented') return ', in no plan: without a flue it can kill in a closed house';
  return safetyRead ? ', safety words read' : ', left out until you have read the safety words';
}

const THERMOMETER_PLACES = { inside: 'inside', outside: 'outside', cover: 'under the cover', soil: 'in the soil', water: 'in the water', stones: 'in the stones', tube: 'in the ground tube' } as const;

function thermometersWords({ thermometers, primary }: SummaryView): string | null {
  const words = thermometers.map(({ name, place, heightM, sunlit }) =>
    [name === place ? THERMOMETER_PLACES[place] : `${name} (${THERMOMETER_PLACES[place]})`, ...(heightM === null ? [] : [`${lengthWords(heightM, primary)} high`]), ...(sunlit === null ? [] : [sunlit ? 'in the sun' : 'in the shade'])].join(', '),
  );
  return words.length === 0 ? null : words.join('; ');
}

function otherWords(greenhouse: Greenhouse, { file, primary, temperatureUnits }: SummaryView): string | null {
  const { solidWall, edgeInsulation, curtain, vents, ridgeRuns, leakage, place } = greenhouse;
  const parts = [
    ...(file.name === undefined ? [] : [`called ${greenhouse.name}`]),
    ...(file.ridgeRuns === undefined ? [] : [`the ridge runs ${typeof ridgeRuns === 'number' ? `${ridgeRuns} degrees from north` : ridgeRuns}`]),
    ...(file.leakage === undefined ? [] : [leakage]),
    ...(file.place?.surroundings === undefined ? [] : [`${place.surroundings} surroundings`]),
    ...(solidWall ? [`a solid wall${solidWall.faces === undefined ? '' : ` on the ${solidWall.faces} side`}${solidWall.height === undefined ? '' : `, ${lengthWords(solidWall.height, primary)} high`}, ${guess(file.solidWall?.foam, `${lengthWords(solidWall.foam, primary)} of foam`)}${solidWall.masonry > 0 ? `, ${lengthWords(solidWall.masonry, primary)} of ${solidWall.stone}` : ''}`] : []),
    ...(edgeInsulation ? [`foam in the ground ${lengthWords(edgeInsulation.depth, primary)} deep, ${guess(file.edgeInsulation?.thickness, `${lengthWords(edgeInsulation.thickness, primary)} thick`)}`] : []),
    ...(curtain ? [`a ${curtain.kind} curtain`] : []),
    ...(vents ? [`vents of ${areaWords(vents.area, primary)}, open above ${temperature(vents.openAbove, temperatureUnits)}${vents.opener ? ' by themselves' : ''}`] : []),
  ];
  return parts.length === 0 ? null : parts.join('; ');
}

const coordinate = (degrees: number, positive: string, negative: string): string => `${Math.abs(degrees).toFixed(3)} ${degrees < 0 ? negative : positive}`;

function sizeWords({ size, shape, sideHeight }: Greenhouse, { file, primary }: SummaryView): string {
  const { width, length, height } = size;
  const other = primary === 'ft' ? `${[width, length, height].map((metres) => short(metres)).join(' x ')} m` : `${[width, length, height].map((metres) => short(metres / METRES_PER_FOOT)).join(' x ')} ft`;
  const one = (metres: number): string => (primary === 'ft' ? feet(metres) : `${short(metres)} m`);
  const side = shape === 'half-round' ? '' : `, side walls ${lengthWords(sideHeight, primary)}${file.sideHeight === undefined ? ' (my guess)' : ''}`;
  return `${one(width)} wide, ${one(length)} long, ${one(height)} tall (${other}), ${SHAPE_WORDS[shape]}${side}`;
}

/** The size as far as it goes, with numbers as they were said. */
function partSizeWords({ size, isPlainSure, primary }: SummaryView): string | null {
  const said = (quantity: SizeDraft['width']): string => (quantity === undefined ? '' : `${short(quantity.value, 2)}${quantity.unit === null ? (isPlainSure ? ` ${primary}` : '') : ` ${quantity.unit}`}`);
  const parts = [
    ...(size.width === undefined ? [] : [`${said(size.width)} wide`]),
    ...(size.length === undefined ? [] : [`${said(size.length)} long`]),
    ...(size.height === undefined ? [] : [`${said(size.height)} tall`]),
    ...(size.side === undefined ? [] : [`side walls ${said(size.side)}`]),
    ...(size.shape === undefined ? [] : [SHAPE_WORDS[size.shape]]),
  ];
  return parts.length === 0 ? null : parts.join(', ');
}

const layersWords = ({ layers, blower }: Greenhouse, { file }: SummaryView): string => {
  const kinds = [...new Set(layers.map(({ film }, at) => guess(file.layers?.[at]?.film, FILM_WORDS[film])))];
  return `${layers.length === 1 ? 'one layer' : 'two layers'}, ${kinds.length === 1 ? kinds[0] : `${kinds[0]} outside, ${kinds[1]} inside`}${blower ? ', kept apart by a blower' : ''}`;
};

/** What is known of a line; null where nothing is. */
export function lineWords(line: Line, view: SummaryView): string | null {
  const { greenhouse, file, primary, temperatureUnits } = view;
  switch (line) {
    case 'place':
      return file.place === undefined ? null : `${view.placeName === null ? '' : `${view.placeName}, `}${coordinate(file.place.latitude, 'N', 'S')}, ${coordinate(file.place.longitude, 'E', 'W')}`;
    case 'size':
      return file.size === undefined ? partSizeWords(view) : sizeWords(greenhouse, view);
    case 'layers':
      return file.layers === undefined ? null : layersWords(greenhouse, view);
    case 'covers':
      return coversWords(greenhouse.beds);
    case 'water':
      return storesWords(greenhouse, view);
    case 'soil':
      return file.soil === undefined ? null : `${guess(file.soil.kind, greenhouse.soil.kind)}, ${guess(file.soil.moisture, greenhouse.soil.moisture)}${file.soil.pathMoisture === undefined ? '' : `, paths ${file.soil.pathMoisture}`}`;
    case 'air':
      return airWords(greenhouse, view);
    case 'compost': {
      const { compost } = greenhouse;
      return compost ? `${volumeWords(compost.volume, primary)}, started ${compost.started}${compost.against === undefined ? '' : `, against ${compost.against}`}${compost.fan ? `, air blown through it, fan ${fanWords(compost.fan, file.compost?.fan, primary)}` : ''}` : null;
    }
    case 'heater':
      return heaterWords(greenhouse, view);
    case 'crops': {
      const shown = greenhouse.beds.filter(({ crops, area, name }) => crops.length > 0 || area !== undefined || name !== greenhouse.beds[0]?.name || greenhouse.beds.length > 1);
      return shown.length === 0 ? null : shown.map((bed) => bedWords(bed, primary)).join('; ');
    }
    case 'thermometers':
      return thermometersWords(view);
    case 'evening': {
      const { eveningAt, morningAt, bedtime } = greenhouse.grower;
      const parts = [...(eveningAt === undefined ? [] : [eveningAt]), ...(file.grower?.morningAt === undefined ? [] : [`morning message ${morningAt}`]), ...(file.grower?.bedtime === undefined ? [] : [`bedtime ${bedtime}`])];
      return parts.length === 0 ? null : parts.join(', ');
    }
    case 'units':
      return `${temperatureUnits === 'F' ? 'Fahrenheit' : 'Celsius'}, ${primary === 'ft' ? 'feet' : 'metres'}`;
    case 'other':
      return otherWords(greenhouse, view);
  }
}
