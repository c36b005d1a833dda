import type { Snag } from '../snag/index.ts';
import type { JobDocument } from './document.ts';
import { type DesignRecord, isChild } from './records/design-record.ts';

/** Ids: each once, each reference to something that is there, and no record that belongs to itself. */
export function checkReferences(job: JobDocument): readonly Snag[] {
  return [
    ...repeatedIds(job),
    ...badParents(job),
    ...badLots(job),
    ...badHinges(job),
    ...badPins(job),
    ...badStays(job),
    ...badPulls(job),
    ...badLevellers(job),
    ...badRunners(job),
    ...badOver(job),
  ];
}

function repeatedIds(job: JobDocument): readonly Snag[] {
  const { rack, tools, people } = job.shop;
  const lists: readonly [string, readonly { readonly id: string }[]][] = [
    ['design/records', job.design.records],
    ['shop/tools', tools],
    ['shop/people', people],
    ['shop/rack/lots', rack.lots],
    ['shop/rack/stock', rack.lots.flatMap((l) => l.stock)],
    ['shop/rack/screws', rack.screws],
    ['shop/rack/bits', rack.bits],
    ['shop/rack/hinges', rack.hinges ?? []],
    ['shop/rack/pins', rack.pins ?? []],
    ['shop/rack/fixings', rack.fixings ?? []],
    ['shop/rack/runners', rack.runners ?? []],
    ['shop/rack/stays', rack.stays ?? []],
    ['shop/rack/pulls', rack.pulls ?? []],
  ];
  const snags: Snag[] = [];
  for (const [path, list] of lists) {
    const seen = new Set<string>();
    for (const { id } of list) {
      if (seen.has(id))
        snags.push({
          code: 'document.repeated-id',
          level: 'stop',
          where: { path: `${path}/${id}` },
          sentence: `“${id}” is used twice.`,
          cures: [{ says: 'Give one of the two another id.' }],
        });
      seen.add(id);
    }
  }
  return snags;
}

function badParents(job: JobDocument): readonly Snag[] {
  const byId = new Map<string, DesignRecord>(job.design.records.map((r) => [r.id, r]));
  const snags: Snag[] = [];
  for (const r of job.design.records) {
    if (!isChild(r)) continue;
    const path = `design/records/${r.id}/parent`;
    if (!byId.has(r.parent)) {
      snags.push({
        code: 'document.no-such-record',
        level: 'stop',
        where: { path, record: r.id },
        sentence: `“${r.id}” belongs to “${r.parent}”, which isn’t there.`,
        cures: [{ says: `Add a record “${r.parent}”, or name the one it belongs to.` }],
      });
      continue;
    }
    if (goesRound(r, byId))
      snags.push({
        code: 'document.circular',
        level: 'stop',
        where: { path, record: r.id },
        sentence: `“${r.id}” belongs, by way of “${r.parent}”, to itself.`,
        cures: [{ says: 'Let one of them belong to the piece or the case.' }],
      });
  }
  return snags;
}

function goesRound(start: DesignRecord, byId: ReadonlyMap<string, DesignRecord>): boolean {
  const seen = new Set([start.id]);
  let at: DesignRecord | undefined = start;
  while (at && isChild(at)) {
    at = byId.get(at.parent);
    if (at === start) return true;
    if (at && seen.has(at.id)) return false;
    if (at) seen.add(at.id);
  }
  return false;
}

function badLots(job: JobDocument): readonly Snag[] {
  const lots = new Map(job.shop.rack.lots.map((l) => [l.id, l]));
  const snags: Snag[] = [];
  for (const r of job.design.records) {
    const wants: [field: string, lot: string | undefined, form: 'sheet' | 'strip' | 'either'][] = [];
    // A top is glued up where it is of strips.
    if ('board' in r) wants.push(['board', r.board, r.kind === 'top' ? 'either' : 'sheet']);
    if (r.kind === 'drawers')
      wants.push(
        ['bottomBoard', r.bottomBoard, 'sheet'],
        ['frontBoard', r.frontBoard, 'sheet'],
        ['runnerStrip', r.runnerStrip, 'strip'],
      );
    if (r.kind === 'handle') wants.push(['strip', r.strip, 'strip']);
    if (r.kind === 'case') wants.push(['splineBoard', r.splineBoard, 'sheet']);
    if (r.kind === 'base') wants.push(['strip', r.strip, 'strip']);
    if (r.kind === 'edging') wants.push(['strip', r.strip, 'strip']);
    if (r.kind === 'top') wants.push(['edging', r.edging, 'strip'], ['buttons', r.buttons, 'strip']);
    for (const [field, id, form] of wants) {
      if (id === undefined) continue;
      const lot = lots.get(id);
      const path = `design/records/${r.id}/${field}`;
      if (!lot)
        snags.push({
          code: 'document.no-such-lot',
          level: 'stop',
          where: { path, record: r.id },
          sentence: `“${r.id}” is to be made of “${id}”, a lot that the rack doesn’t have.`,
          cures: [{ says: `Add the lot, or name one of: ${[...lots.keys()].join(', ')}.` }],
        });
      else if (lot.tape !== undefined && !(r.kind === 'edging' && field === 'strip'))
        snags.push({
          code: 'document.wrong-form',
          level: 'stop',
          where: { path, record: r.id },
          sentence: `“${r.id}” needs solid wood here, but “${id}” is veneer tape for front edges.`,
          cures: [{ says: 'Name a lot of solid strips.' }],
        });
      else if (form !== 'either' && lot.form !== form)
        snags.push({
          code: 'document.wrong-form',
          level: 'stop',
          where: { path, record: r.id },
          sentence: `“${r.id}” needs ${form === 'sheet' ? 'a sheet' : 'strips'} here, but “${id}” is ${lot.form === 'sheet' ? 'a sheet' : 'strips'}.`,
          cures: [{ says: `Name a lot of ${form}s.` }],
        });
    }
  }
  for (const lot of job.shop.rack.lots) snags.push(...lotSizes(lot));
  return snags;
}

function lotSizes(lot: JobDocument['shop']['rack']['lots'][number]): readonly Snag[] {
  const snags: Snag[] = [];
  const missing = (path: string, sentence: string, cure = 'Add “width”.') =>
    snags.push({
      code: 'document.missing-field',
      level: 'stop',
      where: { path: `shop/rack/lots/${lot.id}/${path}`, lot: lot.id },
      sentence,
      cures: [{ says: cure }],
    });
  if (lot.form === 'strip' && lot.width === undefined) missing('width', `Strips “${lot.id}” need a width.`);
  if (lot.form === 'sheet')
    for (const s of lot.stock)
      if (s.width === undefined) missing(`stock/${s.id}/width`, `Sheet “${s.id}” needs a width.`);
  for (const s of lot.stock) {
    if (lot.form === 'strip' && s.goodFaces !== undefined)
      snags.push({
        code: 'stock.faces-of-strips',
        level: 'stop',
        where: { path: `shop/rack/lots/${lot.id}/stock/${s.id}/goodFaces`, lot: lot.id },
        sentence: `“${s.id}” is a strip: its four sides are planed, and good faces are told of sheets alone.`,
        cures: [{ says: 'Take “goodFaces” away.' }],
      });
    for (const f of s.flaws ?? []) {
      const path = `stock/${s.id}/flaws/${f.id}`;
      if (lot.form === 'sheet' && (f.width === undefined || f.y === undefined))
        missing(`${path}/width`, `The flaw “${f.id}” of sheet “${s.id}” needs “y” and “width”.`, 'Add them.');
    }
    if ((s.flaws ?? []).length > 0 && (s.have ?? 0) !== 1)
      snags.push({
        code: 'stock.flaws-of-several',
        level: 'stop',
        where: { path: `shop/rack/lots/${lot.id}/stock/${s.id}/flaws`, lot: lot.id },
        sentence: `“${s.id}” has flaws, which belong to one sheet; on the rack there are ${s.have ?? 0}.`,
        cures: [{ says: 'Give every sheet with flaws an entry of its own, with “have” 1.' }],
      });
  }
  return snags;
}

/** Hinges of doors that the rack must have, and screws of hinges. */
function badHinges(job: JobDocument): readonly Snag[] {
  const { screws } = job.shop.rack;
  const hinges = job.shop.rack.hinges ?? [];
  const snags: Snag[] = [];
  for (const r of job.design.records)
    if (
      (r.kind === 'door' || r.kind === 'top') &&
      r.hinge !== undefined &&
      !hinges.some((h) => h.id === r.hinge)
    )
      snags.push({
        code: 'document.no-such-hinge',
        level: 'stop',
        where: { path: `design/records/${r.id}/hinge`, record: r.id },
        sentence: `“${r.id}” is to hang on “${r.hinge}”, a hinge that the rack doesn’t have.`,
        cures: [{ says: 'Add the hinge to the rack, or leave “hinge” out.' }],
      });
  for (const h of hinges)
    if (!screws.some((s) => s.id === h.screw && s.kind === 'countersunk'))
      snags.push({
        code: 'document.no-such-screw',
        level: 'stop',
        where: { path: `shop/rack/hinges/${h.id}/screw` },
        sentence: `Hinge “${h.id}” is fixed with “${h.screw}”, which is no countersunk screw of the rack.`,
        cures: [{ says: 'Add the screw to the rack, or name one that is there.' }],
      });
  return snags;
}

/** Pulls that the rack must have. */
function badPulls(job: JobDocument): readonly Snag[] {
  const pulls = job.shop.rack.pulls ?? [];
  return job.design.records.flatMap((r): Snag[] =>
    r.kind !== 'pull' || r.pull === undefined || pulls.some((p) => p.id === r.pull)
      ? []
      : [
          {
            code: 'document.no-such-pull',
            level: 'stop',
            where: { path: `design/records/${r.id}/pull`, record: r.id },
            sentence: `“${r.id}” names “${r.pull}”, a pull that the rack doesn’t have.`,
            cures: [{ says: 'Add the pull to the rack, or leave “pull” out.' }],
          },
        ],
  );
}

/** Levellers that the rack must have. */
function badLevellers(job: JobDocument): readonly Snag[] {
  const levellers = (job.shop.rack.fixings ?? []).filter((f) => f.kind === 'leveller');
  return job.design.records.flatMap((r): Snag[] =>
    r.kind !== 'base' || r.leveller === undefined || levellers.some((f) => f.id === r.leveller)
      ? []
      : [
          {
            code: 'document.no-such-leveller',
            level: 'stop',
            where: { path: `design/records/${r.id}/leveller`, record: r.id },
            sentence: `“${r.id}” is to stand on “${r.leveller}”, which is no leveller of the rack.`,
            cures: [{ says: 'Add the leveller to the rack’s fixings, or leave “leveller” out.' }],
          },
        ],
  );
}

/** Stays of lids and flaps that the rack must have. */
function badStays(job: JobDocument): readonly Snag[] {
  const stays = job.shop.rack.stays ?? [];
  return job.design.records.flatMap((r): Snag[] =>
    (r.kind !== 'top' && r.kind !== 'door') || r.stay === undefined || stays.some((s) => s.id === r.stay)
      ? []
      : [
          {
            code: 'document.no-such-stay',
            level: 'stop',
            where: { path: `design/records/${r.id}/stay`, record: r.id },
            sentence: `“${r.id}” is to be held open by “${r.stay}”, a stay that the rack doesn’t have.`,
            cures: [{ says: 'Add the stay to the rack, or leave “stay” out.' }],
          },
        ],
  );
}

/** Runners that the rack must have, and their screws. */
function badRunners(job: JobDocument): readonly Snag[] {
  const runners = job.shop.rack.runners ?? [];
  const snags: Snag[] = [];
  for (const r of job.design.records)
    if (r.kind === 'drawers' && r.runner !== undefined && !runners.some((x) => x.id === r.runner))
      snags.push({
        code: 'document.no-such-runner',
        level: 'stop',
        where: { path: `design/records/${r.id}/runner`, record: r.id },
        sentence: `“${r.id}” is to run on “${r.runner}”, a pair of runners that the rack doesn’t have.`,
        cures: [{ says: 'Add the runners to the rack, or leave “runner” out.' }],
      });
  for (const x of runners)
    if (!job.shop.rack.screws.some((s) => s.id === x.screw && s.kind === 'countersunk'))
      snags.push({
        code: 'document.no-such-screw',
        level: 'stop',
        where: { path: `shop/rack/runners/${x.id}/screw` },
        sentence: `Runners “${x.id}” are fixed with “${x.screw}”, which is no countersunk screw of the rack.`,
        cures: [{ says: 'Add the screw to the rack, or name one that is there.' }],
      });
  return snags;
}

/** Pins that the rack must have. */
function badPins(job: JobDocument): readonly Snag[] {
  const pins = job.shop.rack.pins ?? [];
  return job.design.records.flatMap((r): Snag[] =>
    r.kind !== 'pins' || r.pin === undefined || pins.some((p) => p.id === r.pin)
      ? []
      : [
          {
            code: 'document.no-such-pin',
            level: 'stop',
            where: { path: `design/records/${r.id}/pin`, record: r.id },
            sentence: `The shelves of “${r.id}” are to lie on “${r.pin}”, a pin that the rack doesn’t have.`,
            cures: [{ says: 'Add the pin to the rack, or leave “pin” out.' }],
          },
        ],
  );
}

/** What doors close must be openings. */
function badOver(job: JobDocument): readonly Snag[] {
  const openings = new Set(job.design.records.flatMap((r) => (r.kind === 'opening' ? [r.id] : [])));
  return job.design.records.flatMap((r): Snag[] =>
    r.kind !== 'door' && r.kind !== 'sliding-doors'
      ? []
      : (r.over ?? [])
          .filter((id) => !openings.has(id))
          .map((id) => ({
            code: 'document.no-such-record',
            level: 'stop',
            where: { path: `design/records/${r.id}/over`, record: r.id },
            sentence: `“${r.id}” closes “${id}”, which is no opening.`,
            cures: [{ says: `Add an opening “${id}”, or name one that is there.` }],
          })),
  );
}
