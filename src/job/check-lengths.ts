import { fromMm, parseLength } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { JobDocument } from './document.ts';
import { FROM_SIDES } from './records/on-panel.ts';

/** Nothing that is built here is longer, and no board thicker; sums of many such lengths still fit 32 bits. */
const LONGEST = { text: '10 m', ticks: fromMm(10_000) };
const THICKEST = { text: '500 mm', ticks: fromMm(500) };

/** The fields of records and lots that hold lengths. */
const RECORD_LENGTHS = [
  'width',
  'height',
  'depth',
  'size',
  'at',
  'setback',
  'setbackBack',
  'setIn',
  'overhangFront',
  'overhangSides',
  'overhangBack',
  'gap',
  'clear',
  'behind',
  'plug',
  'skirtingHeight',
  'skirtingDepth',
  'floorFall',
  'scribe',
  'apart',
  'apron',
  'opening',
  'diameter',
  'length',
  'fromEdge',
  ...FROM_SIDES.flat(),
  'pitch',
  'front',
  'back',
  'below',
  'above',
  'clearance',
  'overlap',
  'tongue',
  'upperGroove',
  'lowerGroove',
  'engagement',
  'fingerHole',
  'grade',
];
const HINGE_LENGTHS = [
  'cup',
  'deep',
  'edge',
  'cupScrews',
  'cupScrewsBehind',
  'plateScrews',
  'plateBehind',
  'length',
  'width',
  'leaf',
];
const RUNNER_LENGTHS = ['length', 'thickness', 'height', 'travel'];
const PULL_LENGTHS = ['holes', 'thread', 'deep', 'length'];
const PIN_LENGTHS = ['diameter', 'deep', 'stands', 'above'];
const FIXING_LENGTHS = ['diameter', 'length', 'width', 'thickness', 'deep', 'lowest', 'highest'];
const LOT_LENGTHS = ['nominal', 'thickness', 'width', 'veneer'];
const STOCK_LENGTHS = ['length', 'width'];
const FLAW_LENGTHS = ['x', 'y', 'length', 'width'];

/** Lengths that no piece has. A number without a unit is in the shop's, so it is not known before how long it is. */
export function checkLengths(job: JobDocument): readonly Snag[] {
  const snags: Snag[] = [];
  const check = (path: string, holder: object, fields: readonly string[], most: typeof LONGEST) => {
    for (const field of fields) {
      const typed: unknown = Reflect.get(holder, field);
      if (typeof typed !== 'string') continue;
      const read = parseLength(typed, job.shop.units);
      if (!read.ok || read.value <= most.ticks) continue;
      snags.push({
        code: 'document.too-long',
        level: 'stop',
        where: { path: `${path}/${field}` },
        sentence: `“${typed}” is more than ${most.text}, the most there is here.`,
        cures: [
          { says: `Look at the unit: a bare number is in ${job.shop.units === 'mm' ? 'mm' : 'inches'}.` },
        ],
      });
    }
  };
  for (const r of job.design.records) check(`design/records/${r.id}`, r, RECORD_LENGTHS, LONGEST);
  for (const r of job.design.records)
    if (r.kind === 'room')
      for (const list of ['widths', 'heights', 'depths'] as const)
        check(`design/records/${r.id}/${list}`, r[list] ?? [], Object.keys(r[list] ?? []), LONGEST);
  const measured = job.work?.measured ?? {};
  check('work/measured', measured, Object.keys(measured), LONGEST);
  (job.work?.done ?? []).forEach((done, i) => {
    const { sizes = {} } = done;
    check(`work/done/${i}`, done, ['at'], LONGEST);
    check(`work/done/${i}/sizes`, sizes, Object.keys(sizes), LONGEST);
  });
  (job.work?.made ?? []).forEach((made, i) => {
    check(`work/made/${i}`, made, STOCK_LENGTHS, LONGEST);
  });
  for (const lot of job.shop.rack.lots) {
    check(`shop/rack/lots/${lot.id}`, lot, LOT_LENGTHS, THICKEST);
    for (const stock of lot.stock) {
      const at = `shop/rack/lots/${lot.id}/stock/${stock.id}`;
      check(at, stock, STOCK_LENGTHS, LONGEST);
      for (const flaw of stock.flaws ?? []) check(`${at}/flaws/${flaw.id}`, flaw, FLAW_LENGTHS, LONGEST);
    }
  }
  const { wayHome } = job.shop;
  if (wayHome) check('shop/wayHome', wayHome, ['ceiling'], LONGEST);
  for (const door of wayHome?.doors ?? [])
    check(`shop/wayHome/doors/${door.id}`, door, ['width', 'height'], LONGEST);
  const { yard } = job.shop.cutting ?? {};
  if (yard) {
    check('shop/cutting/yard', yard, ['over'], THICKEST);
    check('shop/cutting/yard/vehicle', yard.vehicle, STOCK_LENGTHS, LONGEST);
  }
  for (const hinge of job.shop.rack.hinges ?? [])
    check(`shop/rack/hinges/${hinge.id}`, hinge, HINGE_LENGTHS, THICKEST);
  for (const runner of job.shop.rack.runners ?? [])
    check(`shop/rack/runners/${runner.id}`, runner, RUNNER_LENGTHS, LONGEST);
  for (const pin of job.shop.rack.pins ?? []) check(`shop/rack/pins/${pin.id}`, pin, PIN_LENGTHS, THICKEST);
  for (const pull of job.shop.rack.pulls ?? [])
    check(`shop/rack/pulls/${pull.id}`, pull, PULL_LENGTHS, THICKEST);
  for (const fixing of job.shop.rack.fixings ?? [])
    check(`shop/rack/fixings/${fixing.id}`, fixing, FIXING_LENGTHS, THICKEST);
  return snags;
}
