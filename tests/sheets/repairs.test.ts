import { Rework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { provedRepairs, repairPlans, whyNotProved } from '../../packages/sheets/src/repair/proved-repairs.ts';
import type { RepairPlan } from '../../packages/sheets/src/repair/repair-plan.ts';
import { kitNames } from '../support/kit-fixtures.ts';
import { sheetsOf } from './sheets-of.ts';

/** What can be put right at each step of each variant of a kit. */
function eachStep(name: string) {
  return sheetsOf(name).kit.variants.flatMap(({ job, variant }) => {
    const rework = new Rework(job);
    return job.steps.map((step, at) => {
      const found = {
        where: `${name} ${variant.name} step ${step.number}`,
        kind: step.action.kind,
        plans: repairPlans(rework, at),
        shown: provedRepairs(rework, at),
      };
      rework.apply(step);
      return found;
    });
  });
}

/** The job of a plan without some of the steps that put the mistake right. */
function without(plan: RepairPlan, numbers: ReadonlySet<number>) {
  return { ...plan.job, steps: plan.job.steps.filter(({ number }) => !numbers.has(number)) };
}

describe('repairs of every kit', () => {
  it.each(kitNames)('%s: every repair shown is proved, and no step of it can be left out', (name) => {
    for (const { where, plans, shown } of eachStep(name)) {
      for (const plan of plans) {
        const about = `${where}, ${plan.mistake} ${plan.at}`;
        const told = shown.find(({ mistake }) => mistake === plan.mistake);
        const places = told === undefined || told.steps.length === 0 ? [] : [told.at, ...told.likewise];
        if (!places.includes(plan.at)) continue;
        if (!('job' in plan)) throw new Error(`${about} is shown and was never worked out`);
        expect(whyNotProved(plan.job), about).toBeNull();
        expect(plan.repair.length, about).toBeGreaterThan(0);
        for (const { number } of plan.repair)
          expect(whyNotProved(without(plan, new Set([number]))), `${about} without ${number}`).not.toBeNull();
      }
    }
  });

  it.each(kitNames)(
    '%s: each cut, tap, join and insertion has a way back or says that there is none',
    (name) => {
      for (const { where, kind, shown } of eachStep(name)) {
        if (kind !== 'cut' && kind !== 'tap' && kind !== 'insert' && kind !== 'join') continue;
        expect(
          shown.some(({ steps, unproved }) => steps.length > 0 || unproved.length > 0),
          where,
        ).toBe(true);
        if (kind === 'insert')
          expect(
            shown.every(({ steps }) => steps.length > 0),
            where,
          ).toBe(true);
      }
    },
  );

  it('tells the repair of a wrong cut by its steps, and what it needs beside the bag', () => {
    const cut = eachStep('van-beacon').find(({ kind }) => kind === 'cut');
    expect(cut?.shown[0]).toEqual({
      mistake: 'A wrong wire was cut',
      at: 'K10:3',
      likewise: [],
      steps: [
        'strip the cut end of buzzer return toward K11:2',
        'strip the cut end of buzzer return toward K10:3',
        'join the cut end of buzzer return toward K11:2 and the cut end of buzzer return toward K10:3 with splice for 0.5 mm2 as repair splice',
        'seal repair splice',
      ],
      needs: ['1 splice for two ends of 0.5 mm2, with its own tube, for wet places'],
      before: null,
      again: true,
      unproved: [{ at: 'K10:9', why: 'the work itself uses this wire' }],
    });
  });

  it('tells of the right wire cut at the wrong spot: trimmed where that part comes off, else joined again', () => {
    const [van, boat] = ['van-beacon', 'workboat-alarm'].map((name) =>
      eachStep(name)
        .filter(({ kind }) => kind === 'cut')
        .map(({ shown }) => shown.filter(({ mistake }) => mistake.startsWith('The right wire'))),
    );
    expect(van?.[0]?.map(({ mistake, steps, again }) => [mistake, steps[2], again])).toEqual([
      [
        'The right wire was cut too near K10:4',
        'join the cut end of buzzer toward K10:4 and the cut end of buzzer toward K11:1 with splice for 0.5 mm2 as repair splice',
        true,
      ],
      [
        'The right wire was cut too far from K10:4',
        'join the cut end of buzzer toward K10:4 and the cut end of buzzer toward K11:1 with splice for 0.5 mm2 as repair splice',
        true,
      ],
    ]);
    expect(boat?.[0]).toEqual([
      {
        mistake: 'The right wire was cut too near K20:C',
        at: '',
        likewise: [],
        steps: [
          'cut anchor feed toward K24:1, which leaves the rest of anchor tail and anchor run',
          'remove the off-cut the rest of anchor tail',
        ],
        needs: [],
        before: 'Hold the two ends together and measure the right spot again, as the step says',
        again: false,
        unproved: [],
      },
      {
        mistake: 'The right wire was cut too far from K20:C',
        at: '',
        likewise: [],
        steps: [],
        needs: [],
        before: null,
        again: true,
        unproved: [{ at: '', why: 'more than one splice between two disconnect points: SP1, repair splice' }],
      },
    ]);
    const sheet = sheetsOf('workboat-alarm').files.get('only-work.html') ?? '';
    expect(sheet).toContain('<li>Step 7 is done with this: go on with the next one.</li>');
    expect(sheet).toContain(
      '<b>The right wire was cut too far from K20:C:</b> no way back is proved (more than one splice between two disconnect points: SP1, repair splice). Stop, leave power off, and ask',
    );
  });

  it('tells how a loose splice is cut out and made anew, with the tube that was on the wire, and when not to', () => {
    const [join] = eachStep('workboat-alarm').filter(({ kind }) => kind === 'join');
    expect(join?.shown).toEqual([
      {
        mistake: 'A wire slides in the crimp',
        at: '',
        likewise: [],
        steps: [
          'cut anchor run, which leaves tip of anchor run and anchor run',
          'remove the off-cut tip of anchor run',
          'cut anchor extension, which leaves tip of anchor extension and anchor extension',
          'remove the off-cut tip of anchor extension',
          'strip anchor run@anchor tail',
          'slide TUBE-W over anchor run@anchor tail',
          'strip anchor extension@A',
        ],
        needs: [
          '1 SP-W more than the bag holds',
          '1 TUBE-W more than the bag holds, where the one on the wire is spoilt',
        ],
        before:
          'Only where every wire still reaches without a pull when it is shorter by the splice: else stop and ask',
        again: true,
        unproved: [],
      },
    ]);
  });

  it('shows no repair that is not proved, and says why', () => {
    const { files, verdict } = sheetsOf('bus-marker');
    expect(verdict.verdict).toBe('proved');
    const work = files.get('side-left-work.html') ?? '';
    expect(work).toMatch(
      /no way back is proved from [^.]*KL3:2 \(more than one splice between two disconnect/,
    );
    const cut = eachStep('bus-marker').find(({ kind }) => kind === 'cut');
    const unproved = cut?.shown.flatMap((one) => one.unproved.map(({ at }) => at)) ?? [];
    const proved =
      cut?.shown.flatMap(({ at, likewise, steps }) => (steps.length === 0 ? [] : [at, ...likewise])) ?? [];
    expect(unproved.length).toBeGreaterThan(0);
    expect(proved.filter((at) => unproved.includes(at))).toEqual([]);
  });

  it('puts the steps of a repair on the sheet, and none on the sheet of a kit that is not proved', () => {
    const sound = sheetsOf('van-beacon').files.get('build-early-work.html') ?? '';
    expect(sound).toContain('<li>Seal repair splice.</li>');
    const spoiled = sheetsOf('van-beacon', (text) => text.replace('CAP-W: 2', 'CAP-W: 3'));
    expect(spoiled.verdict.verdict).toBe('refuted');
    expect(spoiled.files.get('build-early-work.html')).not.toContain('repair splice');
  });
});
