import { readKit } from '@loomproof/netlist';
import { type Checklist, finishNow, makeChecklist } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { explainGroup, type GroupExplanation } from '../../packages/sheets/src/checks/explain-group.ts';
import { unpackModel } from '../../packages/sheets/src/checks/model-codec.ts';
import {
  type GroupModel,
  type PageChecks,
  workChecks,
} from '../../packages/sheets/src/checks/work-checks.ts';
import type { HarnessState } from '../../packages/verify/src/readings/harness-state.ts';
import { readFixture, tablesBeside } from '../support/fixture-folder.ts';

/** A variant as its page has it, and as it is. */
function variantOf(kit: string, at: number): { readonly page: PageChecks; readonly checklist: Checklist } {
  const { value } = readKit(readFixture(`${kit}/kit.yaml`), tablesBeside(`${kit}/kit.yaml`));
  const one = value?.variants[at];
  if (value === null || one === undefined) throw new Error(`${kit} cannot be read`);
  const variants = new Map(value.variants.map(({ variant, job }) => [variant.name, job]));
  const stage = { is: 'unplugged' } as const;
  return {
    page: workChecks(one, value.revision, { stage: () => stage, list: 'short', variants }).page,
    checklist: makeChecklist(one.job, { stage, otherWork: one.otherWork?.() ?? new Map(), mostPairs: 0 }),
  };
}

/** What the model in the page says of a harness that is read by a list. */
function explained(page: PageChecks, list: Checklist, state: HarnessState): GroupExplanation {
  const { points } = list.table;
  const rows = list.short.checks.map(({ a, b }) => {
    const expected = state.expected(a, b);
    const read = expected === 'whole' ? '0.2 ohm' : expected === 'open' ? 'OL' : 'not reachable';
    return `${points[a]?.name},${points[b]?.name},${read}`;
  });
  const models = unpackModel(JSON.parse(JSON.stringify(page.model))) as ReadonlyMap<string, GroupModel>;
  const model = models.get(page.whole);
  if (model === undefined) throw new Error('the page has no model');
  const csv = ['from,to,reading', ...rows].join('\n');
  const found = finishNow(
    explainGroup(model, csv, { designRefuted: false, elsewhere: page.elsewhere, mostPairs: 0 }),
  );
  if (found === null) throw new Error('the readings cannot be read');
  return found;
}

describe('the model that a page carries', () => {
  it.each([
    ['fuse-raised', 0],
    ['ambulance-strip', 1],
    ['two-outputs', 0],
  ] as const)('names each fault of %s that a reading shows among those not told apart from it', (kit, at) => {
    const { page, checklist } = variantOf(kit, at);
    const { table, short } = checklist;
    expect(short.detected.length).toBeGreaterThan(10);
    for (const index of short.detected) {
      const state = table.states[index];
      if (state === undefined) continue;
      const { report } = explained(page, checklist, state);
      const ids = report.groups[0]?.map(({ faults }) => faults.map(({ id }) => id).join(' + '));
      expect(ids).toContain(table.list.faults[index]?.id);
    }
  });

  it('says that a label is against the content where the readings are those of another variant', () => {
    const [left, right] = [variantOf('bus-marker', 0), variantOf('bus-marker', 1)];
    expect(explained(left.page, right.checklist, right.checklist.table.designed).readsAs).toBe('side=right');
    expect(explained(right.page, right.checklist, right.checklist.table.designed).readsAs).toBeNull();
  });

  it('has a harness of its own for power that comes back in the midst of the work', () => {
    const { page } = variantOf('forklift-spot', 0);
    const models = unpackModel(JSON.parse(JSON.stringify(page.model))) as ReadonlyMap<string, GroupModel>;
    const steps = [...models].map(([group, { own }]) => [group, own.job.steps.length] as const);
    expect(steps.map(([group]) => group)).toEqual(['power-1', 'power-2']);
    expect(steps[0]?.[1]).toBeLessThan(steps[1]?.[1] ?? 0);
  });
});
