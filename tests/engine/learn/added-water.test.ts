import { expect, it } from 'vitest';
import { revivedState, storedState } from '../../../engine/learn/house-points.js';
import { houseRunner } from '../../../engine/night/house-run.js';
import { CLEAR_COLD_NIGHT, referenceHouse, runInventedNight } from '../../fixtures/houses.js';

const { runner, state } = runInventedNight(referenceHouse(), { ...CLEAR_COLD_NIGHT, sunnyDays: 1 });
const stored = storedState(runner, state);

it('water that was added comes as cold as the ground its pipe lies in, stones as warm as the house', () => {
  const added = houseRunner(referenceHouse({ drums: [{ litres: 208, count: 4 }], stones: [{ volume: 1 }] }));
  const { tempsK } = revivedState(added, stored);
  const { drums, stones, air, deep } = added.model;
  expect(tempsK[air]).toBe(state.tempsK[runner.model.air]);
  expect(tempsK[drums[0]!]).toBe(tempsK[deep]);
  expect(tempsK[stones[0]!.skin]).toBe(tempsK[air]);
});

it('water that was there before keeps its temperature', () => {
  const before = { ...stored, tempsK: { ...stored.tempsK, 'drums 1': 290 } };
  const added = houseRunner(referenceHouse({ drums: [{ litres: 208, count: 4 }, { litres: 100, count: 1 }] }));
  const { tempsK } = revivedState(added, before);
  expect(tempsK[added.model.drums[0]!]).toBe(290);
  expect(tempsK[added.model.drums[1]!]).toBe(tempsK[added.model.deep]);
});
