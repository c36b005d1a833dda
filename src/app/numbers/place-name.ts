import { type JobDocument, toolName, treeOf } from '../../job/index.ts';

const FIELDS: Readonly<Record<string, string>> = {
  at: 'height below',
  spaceWidth: 'width of its place',
  spaceHeight: 'height of its place',
  spaceDepth: 'depth of its place',
  skirtingHeight: 'height of the skirting',
  skirtingDepth: 'depth of the skirting',
  overhangFront: 'overhang in front',
  overhangSides: 'overhang at the sides',
  overhangBack: 'overhang behind',
  setbackBack: 'setback behind',
  setIn: 'distance of its groove from the back edge',
  fromLeft: 'distance from the left',
  fromRight: 'distance from the right',
  fromFront: 'distance from the front',
  fromBack: 'distance from the back',
  fromBelow: 'distance from below',
  fromAbove: 'distance from above',
  nominal: 'nominal thickness',
  have: 'number on the rack',
};

/** What a place in the document is called on the page: `Glaze cabinet, width`, `Birch plywood 18 mm, thickness`. */
export function placeName(job: JobDocument, path: string): string {
  // A length inside a formula has the number of its first character behind the path.
  const steps = path.replace(/@\d+$/, '').split('/');
  const field = steps.at(-1)!;
  const words = FIELDS[field] ?? field;
  if (path.startsWith('design/records/')) {
    const record = treeOf(job).get(steps[2]!);
    return record ? `${recordName(record)}, ${words}` : path;
  }
  const { rack, tools } = job.shop;
  const tool = steps[1] === 'tools' ? tools.find((t) => t.id === steps[2]) : undefined;
  if (tool) return `${toolName(tool)}, ${words}`;
  const lot = steps[2] === 'lots' ? rack.lots.find((l) => l.id === steps[3]) : undefined;
  if (lot) {
    const stock = steps[4] === 'stock' ? lot.stock.find((s) => s.id === steps[5]) : undefined;
    return `${lot.name}${stock ? `, ${stock.name ?? stock.id}` : ''}, ${words}`;
  }
  const screw = steps[2] === 'screws' ? rack.screws.find((s) => s.id === steps[3]) : undefined;
  const hinge = steps[2] === 'hinges' ? rack.hinges?.find((h) => h.id === steps[3]) : undefined;
  const pin = steps[2] === 'pins' ? rack.pins?.find((p) => p.id === steps[3]) : undefined;
  const fixing = steps[2] === 'fixings' ? rack.fixings?.find((f) => f.id === steps[3]) : undefined;
  const runner = steps[2] === 'runners' ? rack.runners?.find((r) => r.id === steps[3]) : undefined;
  const named = screw ?? hinge ?? pin ?? fixing ?? runner;
  return named ? `${named.name ?? named.id}, ${words}` : path;
}

const KINDS = {
  case: 'Case',
  back: 'Back',
  top: 'Top',
  base: 'Base',
  edging: 'Edging',
  hanging: 'On the wall',
} as const;

function recordName(record: ReturnType<ReturnType<typeof treeOf>['get']> & object): string {
  switch (record.kind) {
    case 'piece':
    case 'thing':
      return record.name;
    case 'case':
    case 'back':
    case 'top':
    case 'base':
    case 'edging':
    case 'hanging':
      return KINDS[record.kind];
    case 'door':
      return `Door ${record.id}`;
    case 'sliding-doors':
      return `Sliding doors ${record.id}`;
    case 'shelf':
      return `Shelf ${record.id}`;
    case 'group':
      return `Cases ${record.id}`;
    case 'pins':
      return `Loose shelves ${record.id}`;
    case 'drawers':
      return `Drawers ${record.id}`;
    case 'trays':
      return `Tray dividers ${record.id}`;
    case 'opening':
    case 'size':
      return record.id;
    case 'cable':
      return `Cable hole ${record.id}`;
    case 'pull':
      return `Pulls ${record.id}`;
    case 'front':
      return 'Front';
    case 'handle':
      return `Handles ${record.id}`;
    case 'holes':
      return `Holes ${record.id}`;
    case 'vent':
      return `Vent ${record.id}`;
    case 'divider':
      return `Divider ${record.id}`;
    case 'filler':
      return `Filler ${record.id}`;
    case 'room':
      return `Room ${record.id}`;
  }
}
