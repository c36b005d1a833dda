import type { JobDocument } from '../../src/job/index.ts';
import { jobOf } from './checked-job.ts';

/** What of the bookcase differs from test to test. */
export interface BookcaseSizes {
  readonly units?: 'mm' | 'in';
  readonly width: string;
  readonly height?: string;
  readonly depth?: string;
  readonly load?: string;
  /** More lots for the rack, and more records for the design. */
  readonly lots?: readonly object[];
  readonly records?: readonly object[];
  /** Fields of the shelf, of the case and of the shelf's own lot. */
  readonly shelf?: object;
  readonly inside?: object;
  readonly box?: object;
  readonly board?: object;
  readonly tools?: readonly object[];
  readonly bits?: readonly object[];
  readonly people?: readonly object[];
}

/** Sides, bottom and top of `sides`, and one shelf of `shelving` from side to side: as plain as a case can be. */
export function bookcase(sizes: BookcaseSizes): JobDocument {
  const lot = (id: string, more: object) => ({
    id,
    name: `board ${id}`,
    material: 'birch-plywood',
    form: 'sheet',
    nominal: '18 mm',
    trim: '10 mm',
    stock: [{ id: `${id}-sheet`, length: '3000 mm', width: '1500 mm', price: 90 }],
    ...more,
  });
  return jobOf({
    version: 1,
    design: {
      records: [
        {
          id: 'bookcase',
          kind: 'piece',
          name: 'Bookcase',
          width: sizes.width,
          height: sizes.height ?? '900 mm',
          depth: sizes.depth ?? '300 mm',
        },
        { id: 'case', kind: 'case', parent: 'bookcase', board: 'sides', load: '1 kg', ...sizes.box },
        { id: 'inside', kind: 'opening', parent: 'case', ...sizes.inside },
        {
          id: 'shelf',
          kind: 'shelf',
          parent: 'inside',
          board: 'shelving',
          ...(sizes.load === undefined ? {} : { load: sizes.load }),
          ...sizes.shelf,
        },
        ...(sizes.records ?? []),
      ],
    },
    shop: {
      units: sizes.units ?? 'mm',
      precision: sizes.units === 'in' ? '1/32' : '0.5',
      paper: 'A4',
      currency: 'EUR',
      people: sizes.people ?? [{ id: 'maker', lift: '25 kg' }],
      tools: sizes.tools ?? [
        {
          id: 'saw',
          kind: 'circular-saw',
          accuracy: '0.5 mm',
          kerf: '2.2 mm',
          step: '0.5 mm',
          reach: '55 mm',
        },
        { id: 'rail', kind: 'guide-rail', accuracy: '0.5 mm', length: '3200 mm', width: '200 mm' },
        { id: 'drill', kind: 'drill', accuracy: '0.5 mm', step: '0.5 mm' },
        { id: 'pockets', kind: 'pocket-jig', accuracy: '0.5 mm', step: '1 mm' },
        { id: 'router', kind: 'router', accuracy: '0.3 mm', step: '0.1 mm' },
        { id: 'sander', kind: 'sander', accuracy: '0.5 mm' },
        { id: 'clamps', kind: 'clamp', accuracy: '0.5 mm', count: 4, reach: '1200 mm' },
        { id: 'rule', kind: 'marking', accuracy: '0.3 mm', step: '0.5 mm' },
      ],
      rack: {
        lots: [lot('sides', {}), lot('shelving', sizes.board ?? {}), ...(sizes.lots ?? [])],
        screws: [
          { id: 'pocket-50', kind: 'pocket', length: '50 mm', diameter: '4 mm', head: '9 mm', have: 100 },
          { id: 'pocket-38', kind: 'pocket', length: '38 mm', diameter: '4 mm', head: '9 mm', have: 100 },
          { id: 'pocket-32', kind: 'pocket', length: '32 mm', diameter: '4 mm', head: '9 mm', have: 100 },
          { id: 'pocket-25', kind: 'pocket', length: '25 mm', diameter: '4 mm', head: '9 mm', have: 100 },
          {
            id: 'flat-20',
            kind: 'countersunk',
            length: '20 mm',
            diameter: '3 mm',
            head: '5.5 mm',
            have: 100,
          },
        ],
        bits: sizes.bits ?? [{ id: 'pocket-bit', kind: 'pocket', diameter: '9.5 mm' }],
        adhesives: [],
        finishes: [],
      },
    },
    work: {},
  });
}
