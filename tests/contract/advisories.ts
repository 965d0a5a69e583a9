import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Store } from '../../bot/ports.js';

const EVENING_S = 1_768_424_400; // 2026-01-14T21:00:00Z
const advisory = (changes: Partial<Parameters<Store['addAdvisory']>[0]> = {}): Parameters<Store['addAdvisory']>[0] => ({
  greenhouseId: 'hill',
  night: '2026-01-14',
  issuedAtS: EVENING_S,
  body: '{"text":"Cover the kale."}',
  ...changes,
});

/** How advisories are kept, as part of the store's contract. */
export function advisoriesContract(open: () => Promise<Store>): void {
  describe('advisories', () => {
    let store: Store;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());

    it('gives the latest issued of a greenhouse, the later stored among equals', async () => {
      expect(await store.lastAdvisory('hill')).toBeNull();
      const latest = await store.addAdvisory(advisory({ issuedAtS: EVENING_S + 60 }));
      await store.addAdvisory(advisory());
      await store.addAdvisory(advisory({ greenhouseId: 'vale', issuedAtS: EVENING_S + 120 }));
      expect(latest).toEqual({ ...advisory({ issuedAtS: EVENING_S + 60 }), id: latest.id });
      expect(await store.lastAdvisory('hill')).toEqual(latest);
      const laterStored = await store.addAdvisory(advisory({ issuedAtS: EVENING_S + 60, body: '{"text":"again"}' }));
      expect(await store.lastAdvisory('hill')).toEqual(laterStored);
    });

    it('gives the last issued for that night, whatever came after', async () => {
      await store.addAdvisory(advisory());
      const last = await store.addAdvisory(advisory({ issuedAtS: EVENING_S + 60 }));
      await store.addAdvisory(advisory({ night: '2026-01-15', issuedAtS: EVENING_S + 86_400 }));
      await store.addAdvisory(advisory({ greenhouseId: 'vale', issuedAtS: EVENING_S + 90 }));
      expect(await store.advisoryFor('hill', '2026-01-14')).toEqual(last);
      expect(await store.advisoryFor('hill', '2026-01-13')).toBeNull();
    });

    it('gives the last issued by an instant, that instant included', async () => {
      const first = await store.addAdvisory(advisory());
      const second = await store.addAdvisory(advisory({ issuedAtS: EVENING_S + 60 }));
      await store.addAdvisory(advisory({ night: '2026-01-15', issuedAtS: EVENING_S + 30 }));
      await store.addAdvisory(advisory({ greenhouseId: 'vale', issuedAtS: EVENING_S + 50 }));
      expect(await store.advisoryBy('hill', '2026-01-14', EVENING_S - 1)).toBeNull();
      expect(await store.advisoryBy('hill', '2026-01-14', EVENING_S + 59)).toEqual(first);
      expect(await store.advisoryBy('hill', '2026-01-14', EVENING_S + 60)).toEqual(second);
    });

    it('gives all of a greenhouse page by page, in order of issue, also those of one second', async () => {
      const late = await store.addAdvisory(advisory({ issuedAtS: EVENING_S + 60 }));
      const early = await store.addAdvisory(advisory());
      const together = await store.addAdvisory(advisory({ body: '{"text":"again"}' }));
      await store.addAdvisory(advisory({ greenhouseId: 'vale' }));
      expect(await store.advisoriesAfter('hill', null, 10)).toEqual([early, together, late]);
      expect(await store.advisoriesAfter('hill', null, 1)).toEqual([early]);
      expect(await store.advisoriesAfter('hill', early, 1)).toEqual([together]);
      expect(await store.advisoriesAfter('hill', together, 10)).toEqual([late]);
      expect(await store.advisoriesAfter('hill', late, 10)).toEqual([]);
      await expect(store.advisoriesAfter('hill', null, -1)).rejects.toMatchObject({ code: 'bad-row' });
    });
  });
}
