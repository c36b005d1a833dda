import { describe, expect, test } from 'vitest';
import { type Built, built } from '../../test/build/built.ts';
import { changed } from '../../test/doors/door-job.ts';
import { radioStation } from '../../test/doors/sliding-job.ts';
import type { Traced } from '../measure/index.ts';
import { sizesMade } from './sizes-made.ts';

const MM = 3200;

function mm({ drawn }: Built, t: Traced): number {
  return drawn.ledger.ticks(t) / MM;
}

/** The cuts of loose parts after the case stands, by part and direction, mm. */
function lateCuts(of: Built): ReadonlyMap<string, number> {
  return new Map(
    of.build.operations.flatMap(({ does, stage }) =>
      does.act === 'saw' && stage === 'hang'
        ? [[`${does.workpiece} ${does.across}`, mm(of, does.at)] as const]
        : [],
    ),
  );
}

const inset = {
  full: { suits: 'inset' },
  half: { suits: 'inset' },
  'coat-door': { hang: 'inset' },
  'bag-doors': { hang: 'inset' },
};

describe('inset doors', () => {
  const of = built(changed(inset));
  const doors = of.drawn.parts.filter((p) => p.cutLater);
  const at = (id: string) => of.build.operations.findIndex((o) => o.id === id);

  test('come off the sheet 10 mm larger both ways, and are cut to their openings once those are measured', () => {
    expect(doors.map((p) => p.mark)).toEqual(['K1', 'K2', 'K3']);
    const cuts = lateCuts(of);
    for (const door of doors)
      for (const size of ['length', 'width'] as const) {
        const drawn = mm(of, door[size]);
        expect(Math.abs(mm(of, door.cut[size]) - drawn - 10)).toBeLessThanOrEqual(0.5);
        // As fine as the saw is set, and never so wide that the gaps are lost.
        expect(cuts.get(`${door.mark} ${size}`)! - drawn).toBeLessThanOrEqual(0.25);
        expect(drawn - cuts.get(`${door.mark} ${size}`)!).toBeLessThanOrEqual(0.75);
      }
    for (const { mark } of doors) {
      const cut = at(`${mark}/cut-length`);
      const measured = of.build.operations.findIndex((o) => o.kind === 'measure' && o.title.includes(mark));
      expect(cut).toBeGreaterThan(measured);
      expect(measured).toBeGreaterThan(at('case/check-square'));
      // What is bored is measured from sides that are final.
      const bored = of.build.operations.flatMap((o, i) =>
        'workpieces' in o.does && o.does.workpieces.includes(mark) ? [i] : [],
      );
      expect(bored.length).toBeGreaterThan(0);
      expect(Math.min(...bored)).toBeGreaterThan(cut);
    }
  });

  test('have their sizes once they are cut to the opening, not when they come off the sheet', () => {
    const made = of.build.operations.flatMap((o) =>
      sizesMade(of.drawn, o).flatMap(([name]) => (name.startsWith('K') ? [`${o.stage} ${name}`] : [])),
    );
    expect(made.sort()).toEqual(['K1', 'K2', 'K3'].flatMap((k) => [`hang ${k}.length`, `hang ${k}.width`]));
  });

  test('only their own cut counts among the errors of their fits', () => {
    for (const fit of of.drawn.fits) expect(fit.cutLater === true, fit.id).toBe(fit.kind === 'door');
  });

  test('follow an opening that came out wider', () => {
    const wider = changed(inset) as ReturnType<typeof changed> & { work: object };
    const clear = of.drawn.dimensions.get('coats.width')!;
    wider.work = { measured: { 'coats.width': `${mm(of, clear) + 2} mm` } };
    expect(lateCuts(built(wider)).get('K1 width')).toBe(lateCuts(of).get('K1 width')! + 2);
  });
});

test('overlay doors are cut at once', () => {
  expect(lateCuts(built(changed({}))).size).toBe(0);
});

test('sliding doors are cut to the height between their grooves, then bored', () => {
  const of = built(radioStation());
  const set = of.drawn.sliding[0]!;
  const cuts = lateCuts(of);
  for (const leaf of set.leaves) {
    const part = of.drawn.parts.find((p) => p.id === leaf.part)!;
    expect(mm(of, part.cut.length) - mm(of, part.length)).toBeGreaterThan(9);
    expect(Math.abs(cuts.get(`${part.mark} length`)! - mm(of, part.length))).toBeLessThanOrEqual(0.5);
  }
});
