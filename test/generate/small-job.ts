/** A document as plain JSON, for tests to change. */
export interface PlainJob {
  version: number;
  design: { records: Record<string, unknown>[] };
  shop: {
    units: string;
    people: Record<string, unknown>[];
    tools: Record<string, unknown>[];
    rack: {
      lots: (Record<string, unknown> & { stock: Record<string, unknown>[] })[];
      screws: Record<string, unknown>[];
      bits: Record<string, unknown>[];
    } & Record<string, unknown>;
  } & Record<string, unknown>;
  work: object;
}

/** The smallest job with one of everything: two bays, shelves, back, edged top, base and lipping. A new one each time. */
export function smallJob(): PlainJob {
  const sheet = (id: string, thickness: string) => ({
    id,
    name: id,
    material: 'birch-plywood',
    form: 'sheet',
    nominal: thickness,
    stock: [{ id: `${id}-sheet`, length: '2500 mm', width: '1250 mm', price: 90 }],
  });
  const strip = (id: string, thickness: string) => ({
    id,
    name: id,
    material: 'ash-white',
    form: 'strip',
    nominal: thickness,
    width: '20 mm',
    stock: [{ id: `${id}-length`, length: '2400 mm', price: 9 }],
  });
  return {
    version: 1,
    design: {
      records: [
        {
          id: 'cupboard',
          kind: 'piece',
          name: 'Cupboard',
          width: '1000 mm',
          height: '800 mm',
          depth: '350 mm',
        },
        { id: 'case', kind: 'case', parent: 'cupboard', board: 'birch18' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
        { id: 'left', kind: 'opening', parent: 'inside', size: 'equal' },
        { id: 'right', kind: 'opening', parent: 'inside', size: 'equal' },
        { id: 'upright', kind: 'divider', parent: 'inside' },
        { id: 'shelves', kind: 'shelf', parent: 'left', count: 2, load: '20 kg' },
        { id: 'shelf', kind: 'shelf', parent: 'right', at: '300 mm' },
        { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'rabbet' },
        { id: 'top', kind: 'top', parent: 'case', board: 'birch18', overhangSides: '25 mm', edging: 'ash18' },
        { id: 'base', kind: 'base', parent: 'case', board: 'birch18', height: '80 mm', setback: '40 mm' },
        { id: 'lipping', kind: 'edging', parent: 'case', strip: 'ash6' },
      ],
    },
    shop: {
      units: 'mm',
      precision: '0.5',
      paper: 'A4',
      currency: 'EUR',
      people: [{ id: 'maker', lift: '25 kg' }],
      tools: [
        { id: 'drill', kind: 'drill', accuracy: '0.5 mm', step: '0.5 mm' },
        { id: 'pockets', kind: 'pocket-jig', accuracy: '0.5 mm', step: '1 mm' },
        { id: 'router', kind: 'router', accuracy: '0.3 mm', step: '0.1 mm', edgeGuide: true },
      ],
      rack: {
        lots: [
          sheet('birch18', '18 mm'),
          sheet('birch6', '6.5 mm'),
          strip('ash18', '18 mm'),
          strip('ash6', '6 mm'),
        ],
        screws: [
          { id: 'pocket-32', kind: 'pocket', length: '32 mm', diameter: '4 mm', head: '9 mm' },
          { id: 'flat-20', kind: 'countersunk', length: '20 mm', diameter: '3 mm', head: '5.5 mm' },
        ],
        bits: [{ id: 'twist-2', kind: 'twist', diameter: '2 mm' }],
        adhesives: [],
        finishes: [],
      },
    },
    work: {},
  };
}

/** The record of an id. */
export function recordOf(job: PlainJob, id: string): Record<string, unknown> {
  const record = job.design.records.find((r) => r.id === id);
  if (!record) throw new Error(`no record ${id}`);
  return record;
}

/** The lot of an id. */
export function lotOf(job: PlainJob, id: string): PlainJob['shop']['rack']['lots'][number] {
  const lot = job.shop.rack.lots.find((l) => l.id === id);
  if (!lot) throw new Error(`no lot ${id}`);
  return lot;
}

/** The value with all in it frozen, so that whoever touches it throws. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) frozen(inner);
  }
  return value;
}

/** Puts screws of one kind and thickness on the rack, one of each length (mm); measures as they are written. */
export function addScrews(
  job: PlainJob,
  kind: 'pocket' | 'countersunk',
  lengths: readonly number[],
  { diameter, head }: { readonly diameter: string; readonly head: string },
): void {
  for (const long of lengths)
    job.shop.rack.screws.push({ id: `${kind}-${long}`, kind, length: `${long} mm`, diameter, head });
}
