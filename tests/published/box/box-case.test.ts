import { describe, expect, it } from 'vitest';
import { checkBoxCase } from './box-case.js';
import { EXAMPLE_BOX } from './example-box.js';

/** What is said of a description that was spoilt. */
function faultsOf(changes: Readonly<Record<string, unknown>>): readonly string[] {
  const check = checkBoxCase({ ...EXAMPLE_BOX, ...changes });
  return check.ok ? [] : check.faults;
}

const [window] = EXAMPLE_BOX.windows!;
const { glazing } = EXAMPLE_BOX;

describe('a description file', () => {
  it('is taken when it is whole, and needs neither windows nor fans', () => {
    expect(checkBoxCase(EXAMPLE_BOX).ok).toBe(true);
    expect(faultsOf({ windows: undefined, glazing: undefined, ventilation: undefined })).toEqual([]);
  });

  it.each([
    ['a field that does not exist', { heating: 20 }, 'the file: no such field: heating'],
    ['a missing field', { gains: undefined }, 'gains: expected object'],
    ['a negative thickness', { constructions: { board: [{ ...EXAMPLE_BOX.constructions['board']![0], thicknessM: -0.1 }] } }, 'constructions.board[0].thicknessM'],
    ['a construction that is not described', { roof: 'straw' }, 'roof: no construction is called "straw"; expected one of "board"'],
    ['windows without glazing', { glazing: undefined }, 'glazing: missing, but there are windows'],
    ['a gap too few', { glazing: { ...glazing, gaps: [] } }, 'glazing.gaps: expected 1 for 2 panes, got 0'],
    ['a window beyond its wall', { windows: [{ ...window, fromCornerM: 3 }] }, 'windows[0]: reaches beyond its wall of 4 x 2.5 m'],
    ['a window over another', { windows: [window, { ...window, sillM: 1 }] }, 'windows[1]: overlaps windows[0]'],
    ['a wall that no house has', { windows: [{ ...window, wall: 'up' }] }, 'windows[0].wall'],
    ['a pane that gives more light than it gets', { glazing: { ...glazing, panes: glazing!.kind === 'panes' ? glazing!.panes.map((pane) => ({ ...pane, sun: { transmittance: 0.9, reflectance: 0.2 } })) : [] } }, 'glazing.panes[0].sun: transmittance and reflectance add up to more than 1'],
    ['a U value that films alone would not reach', { glazing: { kind: 'u-value', uValueWPerM2K: 9, filmsIncluded: { insideWPerM2K: 8, outsideWPerM2K: 21 }, transmittance: [{ incidenceDeg: 0, share: 0.7 }, { incidenceDeg: 90, share: 0 }], absorbedOutside: 0.1, absorbedInside: 0.1, longwaveEmittance: 0.9 } }, 'glazing.uValueWPerM2K: 9 leaves nothing for the glass'],
  ] as const)('is refused for %s, by its field', (_what, changes, expected) => {
    expect(faultsOf(changes).join('\n')).toContain(expected);
  });
});
