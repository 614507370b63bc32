import { describe, expect, it } from 'vitest';
import { FittedParts } from './fitted-parts.ts';

describe('fitted parts', () => {
  it('are those as found until they are changed, each run by itself', () => {
    const found = ['seal A', null];
    const [one, other] = [new FittedParts(found), new FittedParts(found)];
    one.fit(0, null);
    one.fit(1, 'seal B');
    expect([one.at(0), one.at(1)]).toEqual([null, 'seal B']);
    expect([other.at(0), other.at(1)]).toEqual(['seal A', null]);
    one.fit(0, 'seal C');
    expect(one.at(0)).toBe('seal C');
  });

  it('are none at what is no point', () => {
    const parts = new FittedParts(['']);
    expect([parts.at(-1), parts.at(1)]).toEqual([null, null]);
    expect(parts.at(0)).toBe('');
  });
});
