import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import type { CropWord } from '../../language/crop-word.js';
import type { Fact, PlaceFact, SizeSaid, ShapeFact, UnitsFact } from '../../language/house/house-fact.js';
import { metresOf } from './file-quantities.js';
import { filledIn } from './filled-in.js';
import { putCurtain, putFan, putTubes, putVents } from './put-air.js';
import { putBed, putCover } from './put-beds.js';
import { putLayers, putSite, putSoil, putTimes } from './put-frame.js';
import { putHeater } from './put-heat.js';
import { putCompost, putEdge, putStoneBox, putStones, putWall, putWater } from './put-stores.js';
import { has, remove } from './remove.js';
import { fileSize, makesNoHouse, plainUnit, withShape, withSize } from './size.js';
import type { DescribeState, Detail, DraftFile, Line, SizeDraft } from './state.js';
import { inFile, withThermometer } from './thermometers.js';
import { put, type Measures, type Problem, type Put } from './thing.js';
import { lineOf } from './line-of.js';
import { habitsOfZone, type Habits } from './units-of-place.js';

/** What the dialogue needs of the world. */
export interface DescribeContext {
  readonly nowS: number;
  readonly cropWords: readonly CropWord[];
  /** IANA time zone of a place. */
  readonly zoneAt: (latitude: number, longitude: number) => string;
}

export interface Applied {
  readonly state: DescribeState;
  /** Lines that were understood anew, in order. */
  readonly lines: readonly Line[];
  readonly problems: readonly Problem[];
}

/** About 100 m: finer is never kept. */
const COORDINATE_DECIMALS = 3;
const rounded = (degrees: number): number => Math.round(degrees * 10 ** COORDINATE_DECIMALS) / 10 ** COORDINATE_DECIMALS + 0;

/** Puts every fact into the description, each on its own: one that does not fit is told and the others stay. */
export function applyFacts(before: DescribeState, facts: readonly Fact[], context: DescribeContext): Applied {
  let state = before;
  const lines: Line[] = [];
  const problems: Problem[] = [];
  const seen = new Set<Fact['about']>();
  for (const fact of facts) {
    const outcome = applyFact(state, fact, { ...context, adds: seen.has(fact.about) });
    seen.add(fact.about);
    if ('problem' in outcome) problems.push(outcome.problem);
    else {
      const next = fitting(outcome, problems);
      const isNews = facts.length === 1 || lineOf(fact) !== 'crops' || JSON.stringify([next.file, next.pending]) !== JSON.stringify([state.file, state.pending]);
      const isBare = before.mode === 'change' && fact.about === 'bed' && has(next.file, 'covers') && (next.file.beds ?? []).length > (state.file.beds ?? []).length;
      state = retried(next, context);
      // Feet or metres, when that was asked, is a word on the size.
      const line = fact.about === 'units' && before.asking?.detail === 'plain-unit' ? 'size' : lineOf(fact);
      if (isNews && !lines.includes(line)) lines.push(line);
      // A bed that is new has none: it is said which have.
      if (isBare && !lines.includes('covers')) lines.push('covers');
    }
  }
  return { state, lines, problems };
}

/** A size whose unit has only now become known may be no house: it is told, and asked for anew. */
export function fitting(state: DescribeState, problems: Problem[]): DescribeState {
  const fault = state.file.size === undefined ? null : faultOf(state.file);
  if (fault === null) return state;
  problems.push(fault);
  const { shape } = state.size;
  return sized({ ...state, size: shape === undefined ? {} : { shape } });
}

type Said = DescribeContext & { readonly adds: boolean };

/** Things that waited for the place or for a size are tried again when that is known. */
function retried(state: DescribeState, context: DescribeContext): DescribeState {
  return state.pending.reduce((sofar, one) => {
    const without = { ...sofar, pending: sofar.pending.filter((other) => other !== one) };
    const result = putFact(without, one.fact, { ...context, adds: false });
    return result.kind === 'put' && faultOf(result.file) === null ? withFile(without, result.file) : sofar;
  }, state);
}

function applyFact(state: DescribeState, said: Fact, context: Said): DescribeState | { readonly problem: Problem } {
  switch (said.about) {
    case 'coordinates':
      return withPlace(state, said, { name: null, habits: habitsOfZone(zoneOf(said, context)) });
    case 'town':
      return { ...state, looking: said.town, choices: [] };
    case 'size':
    case 'shape':
      return withSizeSaid(state, said);
    case 'units':
      return withUnits(state, said);
    case 'thermometer':
      return settled({ ...state, thermometers: withThermometer(state, said) }, 'thermometers', 'told');
    case 'none':
      return withoutThing(state, said);
    default:
      return withThing(state, said, context);
  }
}

const zoneOf = ({ latitude, longitude }: PlaceFact, { zoneAt }: DescribeContext): string => (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 ? zoneAt(latitude, longitude) : 'UTC');

const settled = (state: DescribeState, topic: Line, as: 'told' | 'none' | 'skipped'): DescribeState => (topic === 'other' ? state : { ...state, told: { ...state.told, [topic]: as } });

/** The place, to about 100 m; units are guessed from it until the grower says otherwise. */
export function withPlace(state: DescribeState, said: PlaceFact, found: { readonly name: string | null; readonly habits: Habits }): DescribeState | { readonly problem: Problem } {
  const { latitude, longitude } = said;
  if (Math.abs(latitude) > 90 || Math.abs(longitude) > 180) return { problem: { code: 'bad-coordinates' } };
  const units = state.told.units === 'told' ? (state.file.grower?.units ?? found.habits.temperature) : found.habits.temperature;
  const habits = state.told.units === 'told' && state.habits !== null ? { ...found.habits, lengths: state.habits.lengths } : found.habits;
  // The clock, the height and the name of another place are others.
  const { timeZone: _zone, elevation: _height, name: _name, ...around } = state.file.place ?? {};
  const file: DraftFile = { ...state.file, place: { ...around, latitude: rounded(latitude), longitude: rounded(longitude) }, grower: { ...state.file.grower, units } };
  return settled(sized({ ...state, file, habits, placeName: found.name, choices: [], looking: null }), 'place', 'told');
}

function withUnits(state: DescribeState, said: UnitsFact): DescribeState {
  if (state.asking?.detail === 'plain-unit' && said.lengths !== undefined) return sized({ ...state, size: { ...state.size, plain: said.lengths } });
  const base: Habits = state.habits ?? { lengths: 'either', temperature: said.temperature ?? 'C', gallons: 'us' };
  const habits: Habits = { ...base, ...(said.lengths === undefined ? {} : { lengths: said.lengths }), ...(said.temperature === undefined ? {} : { temperature: said.temperature }) };
  const file: DraftFile = said.temperature === undefined ? state.file : { ...state.file, grower: { ...state.file.grower, units: said.temperature } };
  return settled(sized({ ...state, file, habits }), 'units', 'told');
}

function withSizeSaid(state: DescribeState, said: SizeSaid | ShapeFact): DescribeState | { readonly problem: Problem } {
  if (said.about === 'shape' && said.shape === null) return { problem: { code: 'unknown-shape', words: said.words } };
  const size: SizeDraft = said.about === 'shape' ? withShape(state.size, said) : withSize(state.size, said);
  if (makesNoHouse(size)) return { problem: { code: 'no-house' } };
  const next = sized({ ...state, size });
  const fault = faultOf(next.file) ?? loneFault(next);
  return fault === null ? next : { problem: fault };
}

/** A length that is out of all bounds is told at once, before the others are known. */
function loneFault({ size, file }: DescribeState): Problem | null {
  if (file.size !== undefined) return null;
  const spoken = { width: size.width, length: size.length, height: size.height };
  const given = Object.fromEntries(Object.entries(spoken).flatMap(([name, quantity]) => (quantity === undefined || quantity.unit === null ? [] : [[name, metresOf(quantity, 'm') ?? 0]])));
  return faultOf({ ...file, size: { width: 10, length: 20, height: 4, ...given } });
}

/** The file's size, shape and side wall from what was said, as soon as it is sure. */
export function sized(state: DescribeState): DescribeState {
  const { size, habits } = state;
  const unit = plainUnit(size, habits?.lengths ?? null);
  const lengths = unit !== null && 'unit' in unit ? fileSize(size, unit.unit) : null;
  const { size: _size, shape: _shape, sideHeight: _side, ...rest } = state.file;
  const side = size.side !== undefined && unit !== null && 'unit' in unit && size.shape !== 'half-round' ? fileSize({ ...size, width: size.side, length: size.side, height: size.side }, unit.unit)!.height : undefined;
  const file: DraftFile = { ...rest, ...(lengths === null ? {} : { size: lengths }), ...(size.shape === undefined ? {} : { shape: size.shape }), ...(side === undefined || lengths === null ? {} : { sideHeight: side }) };
  return { ...state, file };
}

function withoutThing(state: DescribeState, fact: Extract<Fact, { about: 'none' }>): DescribeState | { readonly problem: Problem } {
  if (state.mode === 'change' && fact.thing !== 'thermometers' && !has(state.file, fact.thing)) return { problem: { code: 'not-there', what: fact.thing } };
  const pending = state.pending.filter((one) => !(one.fact.about === fact.thing || (fact.thing === 'covers' && one.fact.about === 'cover')));
  const file = remove(state.file, fact);
  if (file.kind !== 'put') return state;
  const line = lineOf(fact);
  const emptied = { ...state, pending, file: file.file, ...(fact.thing === 'thermometers' ? { thermometers: [] } : {}) };
  const stillThere = line === 'water' && ((emptied.file.drums ?? []).length > 0 || (emptied.file.stones ?? []).length > 0 || emptied.file.stoneBox !== undefined);
  return settled(emptied, line, fact.thing === 'blower' || stillThere || (fact.thing === 'covers' && fact.beds !== undefined) ? 'told' : 'none');
}

/** Puts a thing into the file; what it lacks is kept with it and asked for. */
function withThing(state: DescribeState, said: Fact, context: Said): DescribeState | { readonly problem: Problem } {
  const waiting = context.adds ? undefined : state.pending.find(({ fact }) => goesOn(fact, said));
  const fact = waiting === undefined ? said : merged(waiting.fact, said);
  const rest = { ...state, pending: state.pending.filter((one) => one !== waiting) };
  const result = putFact(rest, fact, context);
  if (result.kind === 'problem') return { problem: result.problem };
  const topic = lineOf(fact);
  if (result.kind === 'lacks') return settled({ ...rest, pending: [...rest.pending, { fact, parked: false }] }, topic, 'told');
  const fault = faultOf(result.file);
  if (fault !== null) return { problem: fault };
  const safetyDeclined = fact.about === 'heater' ? false : rest.safetyDeclined;
  const coversAll = fact.about === 'cover' ? fact.beds.length === 0 && fact.crops.length === 0 : rest.coversAll;
  return settled({ ...withFile(rest, result.file), safetyDeclined, coversAll }, topic, 'told');
}

const withFile = (state: DescribeState, file: DraftFile): DescribeState => ({ ...state, file });

/** Whether the words go on about a thing that waits; crops wait each for themselves. */
const goesOn = (waiting: Fact, said: Fact): boolean => waiting.about === said.about && (waiting.about !== 'bed' || said.about !== 'bed' || said.crops.some(({ name }) => waiting.crops.some((crop) => crop.name === name)));

/** What was said first, with what was added to it; of crops each has its own. */
function merged(first: Fact, then: Fact): Fact {
  if (first.about === 'bed' && then.about === 'bed') return { ...first, ...then, crops: then.crops.length > 0 ? then.crops : first.crops, bed: then.bed ?? first.bed };
  if (first.about === 'cover' && then.about === 'cover') return { ...first, ...then, beds: then.beds.length > 0 ? then.beds : first.beds, crops: then.crops.length > 0 ? then.crops : first.crops };
  if ('fan' in first && 'fan' in then) return { ...first, ...then, fan: { ...first.fan, ...then.fan } };
  return { ...first, ...then } as Fact;
}

/** What plain numbers of other things are in: as those of the size, else as is usual at the place. */
export function measuresOf(state: DescribeState): Measures {
  const habits: Habits = state.habits ?? { lengths: 'either', temperature: 'C', gallons: 'us' };
  const unit = plainUnit(state.size, habits.lengths);
  return { plain: unit !== null && 'unit' in unit ? unit.unit : habits.lengths === 'ft' ? 'ft' : 'm', habits };
}

/** What a fact lacks, if anything: the detail that has to be asked for. */
export function lackOf(state: DescribeState, fact: Fact, context: DescribeContext): Detail | null {
  const result = putFact(state, fact, { ...context, adds: false });
  return result.kind === 'lacks' ? result.detail : null;
}

function putFact(state: DescribeState, fact: Fact, said: Said): Put {
  const measures = measuresOf(state);
  const { file } = state;
  switch (fact.about) {
    case 'layers':
      return putLayers(file, fact);
    case 'cover':
      return putCover(file, fact, measures);
    case 'water':
      return putWater(file, fact, { ...measures, adds: said.adds });
    case 'stones':
      return putStones(file, fact, { ...measures, adds: said.adds });
    case 'stone-box':
      return putStoneBox(file, fact, measures);
    case 'wall':
      return putWall(file, fact, measures);
    case 'edge':
      return putEdge(file, fact, measures);
    case 'curtain':
      return putCurtain(file, fact);
    case 'vents':
      return putVents(file, fact, measures);
    case 'soil':
      return putSoil(file, fact);
    case 'tubes':
      return putTubes(file, fact, measures);
    case 'fan':
      return putFan(file, fact);
    case 'compost':
      return putCompost(file, fact, measures);
    case 'heater':
      return putHeater(file, fact, measures);
    case 'bed':
      return putBed(file, fact, { ...measures, isCovered: state.mode === 'set-up' && state.coversAll });
    case 'times':
      return putTimes(file, fact);
    case 'site':
      return putSite(file, fact);
    default:
      return put(file);
  }
}

/** The first fault of a file, as far as it goes: what is not known yet is filled with something that fits. */
export function faultOf(file: DraftFile): Problem | null {
  const checked = checkGreenhouse(filledIn(file));
  if (checked.ok) return null;
  const [fault] = checked.faults;
  return fault === undefined ? null : { code: 'fault', field: fault.field, message: fault.message };
}

/** The greenhouse file, once place, size, shape and layers are known. */
export function completeFile({ file, size, thermometers, placeName, told }: DescribeState): GreenhouseFile | null {
  const { place, size: lengths, layers } = file;
  if (place === undefined || lengths === undefined || layers === undefined || size.shape === undefined) return null;
  const { none: _before, ...rest } = filledIn(file);
  const none = SAID_NONE.filter((topic) => told[topic] === 'none');
  const named = placeName === null ? place : { ...place, name: placeName.slice(0, MOST_OF_NAME) };
  return { ...rest, place: named, size: lengths, layers, ...(thermometers.length === 0 ? {} : { thermometers: inFile(thermometers, file) }), ...(none.length === 0 ? {} : { none }) };
}

/** As the file has it at most. */
const MOST_OF_NAME = 120;

/** What may be said not to be there. */
const SAID_NONE = ['covers', 'water', 'air', 'compost', 'heater', 'crops', 'thermometers'] as const satisfies readonly NonNullable<GreenhouseFile['none']>[number][];

