import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MEMBER_CLOUD_HOURS, memberSpread, type EnsembleMember } from '../../../engine/night/member-spread.js';

const MEMBERS = 51;
const HOURS = 24;
/** Cosine and sine over the members have no mean and nothing in common; this scales them to a standard deviation of one. */
const SCALE = Math.sqrt((2 * (MEMBERS - 1)) / MEMBERS);
const axis = (member: number): number => SCALE * Math.cos((2 * Math.PI * member) / MEMBERS);
const across = (member: number): number => SCALE * Math.sin((2 * Math.PI * member) / MEMBERS);

/** Members that stray by a steady amount of each, with a given correlation. */
const members = ({ sdK = 1, cloudSd = 0.1, correlation = 0 }): readonly EnsembleMember[] =>
  Array.from({ length: MEMBERS }, (_, m) => ({
    airTempK: Array.from({ length: HOURS }, (__, hour) => 270 + Math.sin(hour) + sdK * (correlation * axis(m) + Math.sqrt(1 - correlation ** 2) * across(m))),
    cloudFraction: Array.from({ length: HOURS }, () => 0.5 + cloudSd * axis(m)),
  }));
const last = HOURS - 1;

describe('spread of members', () => {
  it.each([-0.9, -0.4, 0, 0.3, 0.8])('tells the two spreads and a correlation of %f that they were made with', (correlation) => {
    const { airTempSpreadK, cloudSpread, airTempCloudCorrelation } = memberSpread(members({ sdK: 0.7, cloudSd: 0.12, correlation }), 41);
    expect(airTempSpreadK[0]).toBeCloseTo(0.7, 10);
    expect(airTempSpreadK[last]).toBeCloseTo(0.7, 10);
    expect(cloudSpread[last]).toBeCloseTo(0.12, 10);
    expect(airTempCloudCorrelation[last]).toBeCloseTo(correlation, 10);
  });

  it('knows the cloud of half a day only when half a day is there', () => {
    const { cloudSpread, airTempCloudCorrelation } = memberSpread(members({}), 41);
    expect(cloudSpread.slice(0, MEMBER_CLOUD_HOURS - 1).every((value) => value === null)).toBe(true);
    expect(cloudSpread.slice(MEMBER_CLOUD_HOURS - 1).every((value) => value !== null)).toBe(true);
    expect(airTempCloudCorrelation.map((value) => value === null)).toEqual(cloudSpread.map((value) => value === null));
  });

  it('takes the mean of the cloud: what comes an hour sooner or later in one run than in another is no spread', () => {
    const inTurn = members({}).map((member, m) => ({ ...member, cloudFraction: member.cloudFraction.map((_, hour) => ((hour + m) % 2 === 0 ? 1 : 0)) }));
    expect(memberSpread(inTurn, 41).cloudSpread[last]).toBeCloseTo(0, 12);
  });

  it('is not known where too few members reach, nor the correlation where they agree on the cloud', () => {
    const eleven = members({}).map((member, m) => (m < 11 ? { ...member, airTempK: member.airTempK.with(last, null) } : member));
    expect(memberSpread(eleven, 41)).toMatchObject({ airTempSpreadK: expect.arrayContaining([null]) as unknown });
    expect(memberSpread(eleven, 41).airTempSpreadK[last]).toBeNull();
    expect(memberSpread(eleven, 40).airTempSpreadK[last]).not.toBeNull();
    const agreed = memberSpread(members({ cloudSd: 0.01, correlation: 0.8 }), 41);
    expect(agreed.cloudSpread[last]).toBeCloseTo(0.01, 10);
    expect(agreed.airTempCloudCorrelation[last]).toBeNull();
    expect(memberSpread([], 0)).toEqual({ airTempSpreadK: [], cloudSpread: [], airTempCloudCorrelation: [] });
  });

  it('has a correlation within -1 and 1 whatever the members, the same in other units and about another middle', () => {
    const numbers = fc.array(fc.tuple(fc.double({ min: -8, max: 8, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })), { minLength: 3, maxLength: 60 });
    fc.assert(fc.property(numbers, fc.double({ min: -20, max: 20, noNaN: true }), (pairs, shiftK) => {
      const made = (strayOf: (strayK: number) => number): number | null | undefined =>
        memberSpread(pairs.map(([strayK, cloud]) => ({ airTempK: Array.from({ length: HOURS }, () => strayOf(strayK)), cloudFraction: Array.from({ length: HOURS }, () => cloud) })), 2).airTempCloudCorrelation[last];
      const found = made((strayK) => 270 + strayK);
      fc.pre(found !== null && found !== undefined && new Set(pairs.map(([strayK]) => Math.round(1000 * strayK))).size > 1);
      expect(Math.abs(found)).toBeLessThanOrEqual(1 + 1e-9);
      expect(made((strayK) => 270 + shiftK + 2 * strayK)).toBeCloseTo(found, 6);
    }));
  });
});
