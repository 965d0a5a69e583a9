import type { LayersFact, SoilFact, SiteFact, TimesFact } from '../../language/house/house-fact.js';
import type { DraftFile } from './state.js';
import { lacks, problem, put, type Put } from './thing.js';

const MOST_LAYERS = 2;
/** The evening message speaks of tonight, and of work that wants doing before bedtime (project estimate). */
const EARLIEST_EVENING = '12:00';
const LATEST_EVENING = '21:30';

/** One or two films; panes and panels are one layer unless a number is said. */
export function putLayers(file: DraftFile, fact: LayersFact): Put {
  const known = file.layers ?? [];
  const isPanel = fact.films.some((film) => film === 'glass' || film === 'twin-wall');
  const changed = fact.change !== undefined && known.length > 0 ? Math.min(MOST_LAYERS, Math.max(1, known.length + fact.change)) : fact.change === 1 ? MOST_LAYERS : undefined;
  const count = fact.count ?? changed ?? (isPanel ? Math.max(1, fact.films.length) : known.length > 0 ? known.length : fact.films.length === MOST_LAYERS || fact.blower === true ? MOST_LAYERS : undefined);
  if (count === undefined) return lacks('count');
  if (!Number.isInteger(count) || count < 1 || count > MOST_LAYERS) return problem({ code: 'layers', count });
  const [first, second] = fact.films;
  const outer = fact.change === 1 ? known[0]?.film : (first ?? known[0]?.film);
  const inner = fact.change === 1 ? (first ?? outer) : (second ?? first ?? known[1]?.film ?? outer);
  const layers = [outer, inner].slice(0, count).map((film) => (film === undefined ? {} : { film }));
  const { blower: _before, ...bare } = file;
  const blower = count === MOST_LAYERS && (fact.blower ?? file.blower);
  return put({ ...bare, layers, ...(blower === true ? { blower } : {}) });
}

export function putSoil(file: DraftFile, fact: SoilFact): Put {
  const soil = { ...file.soil, ...(fact.kind === undefined ? {} : { kind: fact.kind }), ...(fact.moisture === undefined ? {} : { moisture: fact.moisture }), ...(fact.pathMoisture === undefined ? {} : { pathMoisture: fact.pathMoisture }) };
  return put({ ...file, soil });
}

export function putSite(file: DraftFile, fact: SiteFact): Put {
  if (fact.surroundings !== undefined && file.place === undefined) return lacks('place-first');
  return put({
    ...file,
    ...(fact.ridge === undefined ? {} : { ridgeRuns: fact.ridge }),
    ...(fact.leakage === undefined ? {} : { leakage: fact.leakage }),
    ...(fact.name === undefined ? {} : { name: fact.name }),
    ...(fact.surroundings === undefined || file.place === undefined ? {} : { place: { ...file.place, surroundings: fact.surroundings } }),
  });
}

export function putTimes(file: DraftFile, fact: TimesFact): Put {
  const { evening, morning, bedtime } = fact;
  if (evening !== undefined && (evening < EARLIEST_EVENING || evening > LATEST_EVENING)) return problem({ code: 'no-evening', from: EARLIEST_EVENING, until: LATEST_EVENING });
  return put({ ...file, grower: { ...file.grower, ...(evening === undefined ? {} : { eveningAt: evening }), ...(morning === undefined ? {} : { morningAt: morning }), ...(bedtime === undefined ? {} : { bedtime }) } });
}
