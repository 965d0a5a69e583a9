import { createEnergyAudit, forcingFor, houseRunner, kelvinToCelsius, placesOf, placeTempK, runHouse, standingControls, startState, STEP_S, toHouse, type Greenhouse, type House, type HouseRunner, type StepRecord } from '../../engine/index.js';
import { localTime } from '../text/local-time.js';
import { zoneOf } from '../time-zone.js';
import { savedFileSource } from '../weather/saved-file.js';
import { readOptions, required } from './options.js';
import { readPlan } from './plan-file.js';
import { InputError } from './input-error.js';
import { readGreenhouse, readInstant } from './read-input.js';

export const SIMULATE_USAGE = `duskward simulate --greenhouse FILE --weather FILE --from TIME --to TIME [--plan FILE] --json
  Hourly temperatures of every place and heat flows, with the independently computed energy balance error.
  --plan FILE   a JSON list of actions as in an advisory`;

const HOUR_S = 3600;
const hundredth = (value: number): number => Math.round(value * 100) / 100;

export async function simulate(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { greenhouse: { type: 'string' }, weather: { type: 'string' }, from: { type: 'string' }, to: { type: 'string' }, plan: { type: 'string' }, json: { type: 'boolean' } }, SIMULATE_USAGE);
  if (options.help) return void console.log(SIMULATE_USAGE);
  const need = (name: 'greenhouse' | 'weather' | 'from' | 'to'): string => required(options[name], `--${name}`, SIMULATE_USAGE);
  const greenhouse = await readGreenhouse(need('greenhouse'));
  const [fromS, toS] = [readInstant(need('from'), '--from'), readInstant(need('to'), '--to')];
  if (toS <= fromS) throw new InputError('--to: expected a later instant than --from');
  const plan = options.plan === undefined ? [] : await readPlan(options.plan);
  const answer = await savedFileSource({ path: need('weather'), atS: fromS }).weatherAt({ latitude: greenhouse.place.latitude, longitude: greenhouse.place.longitude, elevationM: greenhouse.place.elevation ?? null });
  const house = toHouse(greenhouse);
  const runner = houseRunner(house);
  const start = startState(runner, answer.hours, answer.ground);
  const firstS = answer.hours.timeS[0]!;
  if (fromS < firstS || toS > answer.hours.timeS.at(-1)!) throw new InputError(`the weather file covers ${new Date(firstS * 1000).toISOString()} to ${new Date(answer.hours.timeS.at(-1)! * 1000).toISOString()}; --from and --to must lie inside`);
  const standing = standingControls(greenhouse, house);
  const warmUpToS = firstS + Math.floor((fromS - firstS) / STEP_S) * STEP_S;
  const state = runHouse(runner, start.state, forcingFor(house, answer.hours, { fromS: firstS, toS: warmUpToS }), () => standing);
  const audit = createEnergyAudit(runner);
  const hours: unknown[] = [];
  const time = localTime(zoneOf(greenhouse));
  const forcing = forcingFor(house, answer.hours, { fromS: warmUpToS, toS });
  runHouse(runner, state, forcing, (timeS) => plan.reduce((controls, action) => action(controls, timeS, house), standing), (record) => {
    audit.observe(record);
    if (record.timeS % HOUR_S === 0) hours.push(hourRow(runner, record, { sunW: forcing.sunW[record.stepIndex]!, at: time.iso(record.timeS) }));
  });
  const balance = audit.result();
  console.log(JSON.stringify({ greenhouse: describe(greenhouse, house), from: time.iso(warmUpToS), to: time.iso(toS), stepS: STEP_S, warmUpHours: (warmUpToS - firstS) / HOUR_S, groundBasis: start.basis, hours, energyBalance: { residualJ: Math.round(balance.residualJ), turnoverJ: Math.round(balance.turnoverJ), errorShare: balance.residualShare } }, null, 2));
}

const describe = (greenhouse: Greenhouse, house: House): unknown => ({ name: greenhouse.name, floorAreaM2: hundredth(house.geometry.floorAreaM2), coverAreaM2: hundredth(house.geometry.coverAreaM2), volumeM3: hundredth(house.geometry.volumeM3) });

function hourRow(runner: HouseRunner, record: StepRecord, extra: { sunW: number; at: string }): unknown {
  return {
    at: extra.at,
    places: placesOf(runner).map((key) => ({ ...key, c: hundredth(kelvinToCelsius(placeTempK(runner, record, key))) })),
    heatFlowsW: { sunKept: Math.round(extra.sunW), heater: Math.round(record.heaterW), latentOfSurfaces: Math.round(record.latentW.reduce((sum, watts) => sum + watts, 0)) },
  };
}
