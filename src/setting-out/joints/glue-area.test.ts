import { describe, expect, test } from 'vitest';
import { toolChest } from '../../../test/drawers/chest-job.ts';
import { recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { setOut } from '../set-out-job.ts';
import { glueAreaMm2 } from './glue-area.ts';

const GLUE = [{ id: 'white-glue', material: 'pva' }];
const SCREW = { id: 'face-60', kind: 'countersunk', length: '60 mm', diameter: '4 mm', head: '8 mm' };

function piece(joints: string, fitting = 'rabbet') {
  const job = smallJob();
  Object.assign(recordOf(job, 'case'), { joints });
  recordOf(job, 'back').fitting = fitting;
  job.shop.rack.adhesives = GLUE;
  job.shop.rack.screws.push(SCREW);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const area = (of: ReturnType<typeof piece>, id: string) =>
  glueAreaMm2(of, of.joints.find((j) => j.id === id)!);

describe('the area that is glued', () => {
  // 350 mm deep, less 6 of lipping in front and 6.5 of back, on the saw's grid: 337 mm and a half of 18 mm.
  const faced = piece('face-screws');
  const depth = faced.openings[0]!.depth;
  const mm = faced.ledger.ticks(depth) / 3200;

  test('of an end on a face is the end', () => {
    expect(area(faced, 'case/left-side>case/bottom')).toBe(Math.round(18 * mm));
  });

  test('of a panel in a dado is its end and both cheeks; in a rabbet one of them', () => {
    const let_in = piece('dado');
    expect(area(let_in, 'shelves/shelf:1>case/left-side')).toBe(Math.round((18 + 2 * 6) * mm));
    expect(area(let_in, 'case/bottom>case/left-side')).toBe(Math.round((18 + 9) * mm));
  });

  test('of a mitre is its slope: the strips’ height by their thickness over cos 45 degrees (geometry)', () => {
    const [corner] = faced.joints.filter((j) => j.kind === 'mitre' && j.id.startsWith('base'));
    expect(glueAreaMm2(faced, corner!)).toBe(Math.round(80 * 18 * Math.SQRT2));
  });

  test('is less where a channel runs out in the face: a groove for the back under a shelf’s neighbour', () => {
    const strip = faced.joints.find((j) => j.duty === 'edging' && j.mate === 'case/left-side')!;
    const board = faced.parts.find((p) => p.id === 'case/left-side')!;
    expect(glueAreaMm2(faced, strip)).toBe(Math.round((18 * faced.ledger.ticks(board.length)) / 3200));
  });

  test('of a back in rabbets is the shoulder its face lies on: as wide as the rabbet goes in, as high as the back', () => {
    const j = faced.joints.find((x) => x.duty === 'back' && x.mate === 'case/left-side')!;
    const back = faced.parts.find((p) => p.id === j.part)!;
    const side = faced.parts.find((p) => p.id === 'case/left-side')!;
    const rabbet = side.features.find((f) => f.kind === 'rabbet')!;
    const [wide, high] = [rabbet.depth, back.length].map((t) => faced.ledger.ticks(t) / 3200);
    expect([j.kind, back.place.length]).toEqual(['rabbet', '+z']);
    const clear = faced.ledger.ticks(j.letIn!.endways) / 3200;
    expect(glueAreaMm2(faced, j)).toBe(Math.round((wide! - clear) * high!));
  });

  test('of a drawer’s bottom in a groove is the wall that it lies on', () => {
    const chest = setOut(toolChest());
    const rest = chest.joints.find((j) => j.id === 'planes/bottom>planes/left')!;
    const [across, along] = [0, 1].map(
      (k) => (chest.ledger.ticks(rest.contact.max[k]!) - chest.ledger.ticks(rest.contact.min[k]!)) / 3200,
    );
    expect(across).toBeGreaterThan(4);
    expect(glueAreaMm2(chest, rest)).toBe(Math.round(across! * along!));
  });

  test('is none where nothing is glued', () => {
    expect(area(faced, 'back/back>case/bottom')).toBeUndefined();
  });
});
