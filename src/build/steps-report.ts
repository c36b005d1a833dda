import type { Report } from '../measure/index.ts';
import type { BuildPlan } from './build-plan.ts';
import type { Act, Operation, Touch } from './operation.ts';
import { writtenMoment } from './schedule/moment.ts';
import { momentReport } from './schedule/schedule-report.ts';

/** The step cards as a report, documented as `steps --json`. */
export function stepsReport(build: BuildPlan): Report {
  return {
    stock: build.stock.map((s) => ({
      name: s.name,
      lot: s.lot,
      stock: s.stock,
      length_mm: s.length,
      width_mm: s.width,
      thickness_mm: s.thickness,
      raw_mm: s.raw,
    })),
    stages: build.stages,
    gauge_sticks: build.gauges.map((g) => ({ name: g.name, length_mm: g.length, uses: g.uses })),
    story_sticks: build.stories.map((s) => ({
      name: s.name,
      runs: s.runs,
      length_mm: s.length,
      marks: s.marks.map((m) => ({ part: m.part, from_mm: m.from, to_mm: m.to })),
    })),
    glue_ups: build.glueUps.map((g) => ({
      id: g.id,
      assembly: g.assembly,
      operations: g.operations,
      parts: g.parts,
      minutes: g.minutes,
      minutes_left_by_glue: g.leaves,
      clamps: g.clamps,
      later_stand_dry: g.laterStandDry,
    })),
    operations: build.operations.map((o, i) => ({
      ...operationReport(o),
      starts: momentReport(writtenMoment(build.schedule, build.schedule.operations[i]!.start)),
    })),
  };
}

function operationReport(o: Operation) {
  return {
    id: o.id,
    kind: o.kind,
    stage: o.stage,
    title: o.title,
    tool: o.tool,
    after: o.after,
    face_up: o.faceUp,
    reference: o.reference,
    lines: o.lines,
    lengths_mm: o.lengths,
    does: actReport(o.does),
    minutes: o.minutes,
    clamps: o.clamps,
    together: o.together,
    cautions: o.cautions,
  };
}

function actReport(a: Act): Report {
  switch (a.act) {
    case 'saw':
      return {
        act: a.act,
        workpiece: a.workpiece,
        across: a.across,
        at_mm: a.at,
        keep: a.keep,
        yields: a.yields.map((y) => y ?? null),
        rough_mm: a.rough,
        knife: a.knife,
      };
    case 'saw-alike':
      return {
        act: a.act,
        cuts: a.cuts.map((c) => ({ workpiece: c.workpiece, yields: c.yields.map((y) => y ?? null) })),
        at_mm: a.at,
        knife: a.knife,
      };
    case 'name':
      return { act: a.act, workpiece: a.workpiece, as: a.as };
    case 'plane':
      return { act: a.act, workpieces: a.workpieces, across: a.across, to_mm: a.to };
    case 'glue-up':
      return { act: a.act, boards: a.boards, as: a.as };
    case 'bevel':
      return {
        act: a.act,
        workpieces: a.workpieces,
        edge: a.edge,
        at_mm: a.at,
        angle_degrees: a.angle,
        full_face: a.fullFace,
      };
    case 'part':
      return {
        act: a.act,
        workpiece: a.workpiece,
        at_mm: a.at,
        angle_degrees: a.angle,
        yields: a.yields.map((y) => y ?? null),
      };
    case 'rip-apart':
      return { act: a.act, workpiece: a.workpiece, widths_mm: a.widths, yields: a.yields };
    case 'rabbet':
      return {
        act: a.act,
        workpieces: a.workpieces,
        edge: a.edge,
        face: a.face,
        width_mm: a.width,
        depth_mm: a.depth,
        from_mm: a.from,
        before_mm: a.before,
      };
    case 'groove':
      return {
        act: a.act,
        workpieces: a.workpieces,
        edge: a.edge,
        face: a.face,
        bit_mm: a.bit,
        depth_mm: a.depth,
        channels_mm: a.channels,
        stop: a.stop && { from: a.stop.from, at_mm: a.stop.at },
        other_stop: a.otherStop && { from: a.otherStop.from, at_mm: a.otherStop.at },
      };
    case 'scribe':
      return { act: a.act, workpiece: a.workpiece, edge: a.edge, with: a.with, leaves_mm: a.leaves };
    case 'notch':
      return {
        act: a.act,
        workpieces: a.workpieces,
        end: a.end,
        edge: a.edge,
        length_mm: a.length,
        width_mm: a.width,
      };
    case 'pocket':
      return {
        act: a.act,
        workpieces: a.workpieces,
        face: a.face,
        edge: a.edge,
        from: a.from,
        along_mm: a.along,
        collar_mm: a.collar,
      };
    case 'drill':
      return {
        act: a.act,
        workpieces: a.workpieces,
        side: a.side,
        from: a.from,
        at_mm: a.at,
        diameter_mm: a.diameter,
        depth_mm: a.depth,
        countersink_mm: a.countersink,
        counterbore: a.counterbore && {
          diameter_mm: a.counterbore.diameter,
          depth_mm: a.counterbore.depth,
        },
        bit: a.bit,
        open: a.open,
        dowels: a.dowels,
        across_from: a.acrossFrom,
        about_middle_of: a.middle,
      };
    case 'biscuit-slot':
      return {
        act: a.act,
        workpieces: a.workpieces,
        side: a.side,
        run: a.run,
        slope_from: a.slopeFrom,
        from: a.from,
        across_from: a.acrossFrom,
        at_mm: a.at,
        depth_mm: a.depth,
        kerf_mm: a.kerf,
        cutter_mm: a.cutter,
      };
    case 'spline-groove':
      return {
        act: a.act,
        workpieces: a.workpieces,
        edge: a.edge,
        slope_from: a.slopeFrom,
        ...('routed' in a.by
          ? { bit_mm: a.by.bit, depth_mm: a.by.depth, down_mm: a.by.routed }
          : { passes: a.by.sawn.map((p) => ({ beyond_mm: p.beyond, blade_mm: p.blade })) }),
        stop: a.stop && { from: a.stop.from, at_mm: a.stop.at },
        other_stop: a.otherStop && { from: a.otherStop.from, at_mm: a.otherStop.at },
      };
    case 'slot':
      return {
        act: a.act,
        workpieces: a.workpieces,
        face: a.face,
        run: a.run,
        from: a.from,
        screws: a.screws,
        bit_mm: a.bit,
        ends_mm: a.ends,
        beside_mm: a.beside,
      };
    case 'set':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        turn: a.turn,
        touches: a.touches.map(touchReport),
        glue: a.glue,
        ...(a.folds ? { folds: true } : {}),
        pegs: a.pegs?.map((p) => ({
          with: p.with,
          fixing: p.fixing,
          count: p.count,
          across_mm: p.across,
          wide_mm: p.wide,
        })),
        hooks_mm: a.hooks,
        splines: a.splines?.map((s) => ({
          with: s.with,
          strip: s.strip,
          length_mm: s.length,
          width_mm: s.width,
          behind_mm: s.behind,
        })),
      };
    case 'flush':
      return {
        act: a.act,
        workpieces: a.workpieces,
        sides: a.sides,
        ...(a.strips ? { strips: a.strips } : {}),
      };
    case 'edge':
      return {
        act: a.act,
        pairs: a.pairs,
        turn: a.turn,
        board_turn: a.boardTurn,
        touches: a.touches.map(touchReport),
      };
    case 'screw':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        mate: a.mate,
        by: a.by,
        ...(a.only ? { only: a.only } : {}),
        ...(a.over ? { over: a.over } : {}),
        side: a.side,
        screw: a.screw,
        count: a.count,
        length_mm: a.length,
        diameter_mm: a.diameter,
      };
    case 'plug':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        side: a.side,
        plug: a.plug,
        count: a.count,
        diameter_mm: a.diameter,
      };
    case 'pull':
      return {
        act: a.act,
        workpiece: a.workpiece,
        behind: a.behind,
        into: a.into,
        pull: a.pull,
        screw: a.screw,
        count: a.count,
        length_mm: a.length,
        diameter_mm: a.diameter,
        holes_mm: a.holes,
        deep_mm: a.deep,
      };
    case 'buttons':
      return {
        act: a.act,
        workpieces: a.workpieces,
        into: a.into,
        post: a.post,
        face: a.face,
        top: a.top,
        turn: a.turn,
        tongue_mm: a.tongue,
        beside_mm: a.beside,
        moves_mm: a.moves,
        screw: a.screw,
        length_mm: a.length,
        diameter_mm: a.diameter,
      };
    case 'levellers':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        fixing: a.fixing,
        count: a.count,
        diameter_mm: a.diameter,
        deep_mm: a.deep,
      };
    case 'hinge':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        post: a.post,
        count: a.count,
        cup_mm: a.cup,
        plate_screws_mm: a.plateScrews,
        screw: a.screw,
        length_mm: a.length,
        diameter_mm: a.diameter,
      };
    case 'pin-holes':
      return {
        act: a.act,
        workpieces: a.workpieces,
        side: a.side,
        from: a.from,
        across_from: a.acrossFrom,
        rows: a.rows.map((r) => ({
          across_from: r.acrossFrom,
          lines_mm: r.lines,
          first_mm: r.first,
          pitch_mm: r.pitch,
          count: r.count,
          left_out: r.leftOut,
        })),
        diameter_mm: a.diameter,
        depth_mm: a.depth,
      };
    case 'runners':
      return {
        act: a.act,
        sides: a.sides,
        posts: a.posts,
        into: a.into,
        thickness_mm: a.thickness,
        screw: a.screw,
        length_mm: a.length,
        diameter_mm: a.diameter,
        count: a.count,
        travel_mm: a.travel,
        moves: a.moves,
      };
    case 'draw-out':
      return {
        act: a.act,
        ...(a.guided ? { guided: a.guided } : {}),
        sides: a.sides,
        runners: a.runners,
        into: a.into,
        travel_mm: a.travel,
        moves: a.moves,
      };
    case 'rest':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        posts: a.posts,
        over: a.over,
        hole_mm: a.hole,
        above_mm: a.above,
        level: a.level,
      };
    case 'lift-in':
      return {
        act: a.act,
        workpiece: a.workpiece,
        into: a.into,
        turn: a.turn,
        below: a.below,
        above: a.above,
        groove: a.groove,
        between: a.between,
        beside_mm: a.beside,
        against: a.against,
        lift_mm: a.lift,
      };
    case 'other':
      return { act: a.act, on: a.on };
  }
}

function touchReport(t: Touch): Report {
  return { part: t.part, side: t.side, of: t.of, or: t.or, face: t.face, gap_mm: t.gap };
}
