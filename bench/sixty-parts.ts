/** The document of a case of 60 parts: a wall of six bays with five shelves in each, back, edged top, base and lipping. */
export function sixtyParts(): unknown {
  const bays = [1, 2, 3, 4, 5, 6];
  const sheet = (id: string, thickness: string) => ({
    id,
    name: id,
    material: 'birch-plywood',
    form: 'sheet',
    nominal: thickness,
    thickness,
    stock: [{ id: `${id}-sheet`, length: '2500 mm', width: '1250 mm', price: 90 }],
  });
  const strips = (id: string, thickness: string) => ({
    id,
    name: id,
    material: 'ash-white',
    form: 'strip',
    nominal: thickness,
    width: '20 mm',
    stock: [{ id: `${id}-length`, length: '2400 mm', price: 9 }],
  });
  const screw = (id: string, kind: string, length: string, diameter: string, head: string) => ({
    id,
    kind,
    length,
    diameter,
    head,
  });
  return {
    version: 1,
    design: {
      records: [
        {
          id: 'wall',
          kind: 'piece',
          name: 'Shelf wall',
          width: '2400 mm',
          height: '2100 mm',
          depth: '400 mm',
        },
        { id: 'case', kind: 'case', parent: 'wall', board: 'board' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
        ...bays.map((n) => ({ id: `bay${n}`, kind: 'opening', parent: 'inside' })),
        ...bays.map((n) => ({ id: `books${n}`, kind: 'shelf', parent: `bay${n}`, count: COUNTS[n - 1] })),
        { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'rabbet' },
        {
          id: 'top',
          kind: 'top',
          parent: 'case',
          board: 'board',
          overhangSides: '25 mm',
          edging: 'edge',
          edgedSides: 'all-round',
        },
        { id: 'base', kind: 'base', parent: 'case', board: 'board', height: '80 mm', setback: '40 mm' },
        { id: 'lipping', kind: 'edging', parent: 'case', strip: 'lip' },
      ],
    },
    shop: {
      units: 'mm',
      precision: '0.5',
      paper: 'A4',
      currency: 'EUR',
      people: [],
      tools: [{ id: 'pockets', kind: 'pocket-jig', accuracy: '0.5 mm', step: '1 mm' }],
      rack: {
        lots: [
          sheet('board', '17.6 mm'),
          sheet('thin', '6.3 mm'),
          strips('edge', '20 mm'),
          strips('lip', '6 mm'),
        ],
        screws: [
          screw('pocket-25', 'pocket', '25 mm', '4 mm', '9 mm'),
          screw('pocket-32', 'pocket', '32 mm', '4 mm', '9 mm'),
          screw('flat-20', 'countersunk', '20 mm', '3 mm', '5.5 mm'),
        ],
        bits: [],
        adhesives: [],
        finishes: [],
      },
    },
    work: {},
  };
}

/** Shelves of each bay: with their lippings, the case, its top and base they make 60 parts. */
const COUNTS = [3, 3, 3, 3, 2, 3];
