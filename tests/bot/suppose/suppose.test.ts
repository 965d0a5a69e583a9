import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerMessage, type ConversationPorts } from '../../../bot/conversation.js';
import type { EveningSubject } from '../../../bot/features/evening/issue-advisory.js';
import { workOutHere, type WorkedOutEvening } from '../../../bot/features/evening/work-out-evening.js';
import type { Store } from '../../../bot/ports.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { demoSource } from '../../../bot/weather/demo.js';
import { workOutWeekHere } from '../../../bot/threads/week-work.js';
import { checkGreenhouse, type Greenhouse } from '../../../engine/index.js';

const NOW_S = Date.parse('2026-11-25T20:00:00Z') / 1000;
const clock = { nowS: (): number => NOW_S };
const DEMO = JSON.parse(readFileSync(new URL('../../../config/demo/greenhouse.json', import.meta.url), 'utf8')) as { heater?: unknown };
// Without its heater there are few plans to weigh.
const { heater: _, ...UNHEATED } = DEMO;
const BODIES = { demo: JSON.stringify(DEMO), unheated: JSON.stringify(UNHEATED) } as const;
const GSM = /^[\nA-Za-z0-9 @!"#%&'()*+,\-./:;<=>?_]*$/u;

let store: Store;
let last: WorkedOutEvening;
beforeAll(async () => {
  store = await openSqliteStore({ path: ':memory:' });
  for (const [id, body] of Object.entries(BODIES)) await store.saveGreenhouse({ id, body, savedAtS: NOW_S });
});
afterAll(() => store.close());

function houseNow(body: string): Greenhouse {
  const check = checkGreenhouse(JSON.parse(body));
  if (!check.ok) throw new Error(JSON.stringify(check.faults));
  return check.greenhouse;
}

async function say(text: string, house: keyof typeof BODIES = 'unheated'): Promise<string> {
  const stored = await store.greenhouse(house);
  const subject: EveningSubject = { greenhouseId: house, greenhouse: houseNow(stored!.body), zone: 'America/Toronto' };
  const ports: ConversationPorts = { clock, weather: demoSource(clock), store, log: { info: () => undefined, warn: () => undefined, error: () => undefined }, workOut: async (question) => (last = await workOutHere(question)), workOutWeek: workOutWeekHere };
  const answer = (await answerMessage({ greenhouseId: house, text, receivedAtS: NOW_S }, subject, ports)).text;
  expect(answer).toMatch(GSM);
  return answer;
}

const insideChangeK = (): number => last.supposed!.changes.find(({ at }) => at === 'inside')!.meanK;
const plantsChangesK = (): ReadonlyMap<string, number> => new Map(last.supposed!.changes.flatMap(({ bed, meanK }) => (bed === null ? [] : [[bed, meanK] as const])));

describe('what if', () => {
  it('says that heat warms the house, with its caution, and keeps nothing', async () => {
    expect(await say('what if I set the heater to 6C', 'demo')).toMatch(/degrees? warmer[\s\S]*ground-fault/u);
    expect(insideChangeK()).toBeGreaterThan(0);
    expect(last.supposed!.heatKwh).toBeGreaterThan(0);
    expect(await store.lastAdvisory('demo')).toBeNull();
    expect((await store.greenhouse('demo'))!.version).toBe(1);
  });

  it('has ten more drums warm the house, and says what it took where no number was given', async () => {
    await say('what if I add ten more drums');
    const ten = insideChangeK();
    expect(ten).toBeGreaterThan(0);
    expect(await say('what if I add more drums')).toContain('I took ten drums');
    expect(insideChangeK()).toBe(ten);
  });

  it('has plants lose what their covers give, and the air of the house lose what the covers hold back', async () => {
    await say('what if I leave the covers off');
    const off = plantsChangesK();
    await say('what if I cover the beds');
    const gainK = (bed: string): number => plantsChangesK().get(bed)! - off.get(bed)!;
    expect(gainK('the north bed')).toBeGreaterThan(0.3);
    expect(gainK('the middle bed')).toBeGreaterThan(0.3);
    expect(gainK('the south bed')).toBeLessThanOrEqual(0);
  });

  it.each([['what if I use thermal film instead', 1], ['what if I leave the vents open', -1]] as const)('%s', async (text, sign) => {
    expect(await say(text)).toMatch(/low inside/u);
    expect(Math.sign(insideChangeK()) * sign).toBeGreaterThanOrEqual(0);
  });

  it('asks or says why where it cannot answer', async () => {
    expect(await say('what if I add another layer of film')).toContain('two films already');
  });
});

describe('what has gone wrong', () => {
  it('is kept in the description, counted on at once, and right again on a word', async () => {
    const text = await say('the door was left open');
    expect(text).toMatch(/^Shut the door now/u);
    expect(text).toMatch(/degrees colder/u);
    expect(houseNow((await store.greenhouse('unheated'))!.body).now.doorOpen).toBe(true);
    expect(await say('the door is shut again')).toMatch(/degrees warmer/u);
    expect(houseNow((await store.greenhouse('unheated'))!.body).now.doorOpen).toBe(false);
  });

  it('comes with its caution', async () => {
    expect(await say('there is 20 cm of snow on the roof')).toMatch(/ladder/u);
    expect(houseNow((await store.greenhouse('unheated'))!.body).now.snowOnRoof).toBeCloseTo(0.2, 9);
    expect(await say('the power is out')).toMatch(/unvented/u);
  });
});
