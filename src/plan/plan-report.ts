import {
  type Breakdown,
  goodFacesOf,
  type LotBreakdown,
  type PlannedNode,
  type PlannedSheet,
} from '../breakdown/index.ts';
import { finishReport, scheduleReport, stepsReport } from '../build/index.ts';
import { fitReport } from '../dry-fit/index.ts';
import type { Report } from '../measure/index.ts';
import { glueAreaMm2, partsReport } from '../setting-out/index.ts';
import { fitsReport } from './fits-report.ts';
import type { Plan } from './plan.ts';

/** The whole plan as a report, documented as `plan --json`. */
export function planReport(plan: Plan): Report {
  const { breakdown } = plan;
  return {
    version: 1,
    piece: plan.job.design.records.find((r) => r.kind === 'piece')?.name,
    ...partsReport(plan.setOut),
    openings: plan.setOut.openings.map((o) => ({
      id: o.id,
      width_mm: o.width,
      height_mm: o.height,
      depth_mm: o.depth,
    })),
    joints: plan.setOut.joints.map((j) => ({
      id: j.id,
      kind: j.kind,
      duty: j.duty,
      hold: j.hold,
      part: j.part,
      mate: j.mate,
      contact_mm: j.contact,
      fasteners: j.fasteners,
      glue_area_mm2: glueAreaMm2(plan.setOut, j),
      pegs: j.pegs,
      heads: j.heads,
    })),
    fasteners: plan.setOut.fasteners.map((f) => ({
      id: f.id,
      screw: f.screw,
      through: f.through,
      head_mm: f.head,
      direction: f.direction,
      plug: f.plug,
      length_mm: f.length,
      holds_mm: f.holds,
      spare_mm: f.spare,
    })),
    pegs: plan.setOut.pegs.map((p) => ({
      id: p.id,
      kind: p.kind,
      ...(p.kind === 'spline' ? { strip: p.strip, behind_mm: p.behind } : { fixing: p.fixing }),
      parts: p.parts,
      at_mm: p.at,
      direction: p.direction,
      across_mm: p.across,
      wide_mm: p.wide,
      holds_mm: p.holds,
      spare_mm: p.spare,
    })),
    doors: plan.setOut.doors.map((d) => ({
      part: d.part,
      hang: d.hang,
      hung: d.hung,
      on: d.post,
      opening: { width_mm: d.opening.width, height_mm: d.opening.height },
      gap_mm: d.gap,
      hinge: d.hinge,
      hinges_mm: d.hinges,
      screw: d.screw,
      screw_length_mm: d.screwLength,
      screws_per_hinge: d.screwsPerHinge,
      held: d.held && {
        kg: d.held.kg,
        moment_n_m: d.held.momentNm,
        stays: d.held.stays && {
          id: d.held.stays.id,
          count: d.held.stays.count,
          hold_n_m: d.held.stays.holdNm,
        },
      },
    })),
    levellers: plan.setOut.levellers.map((one) => ({
      base: one.record,
      leveller: one.fixing,
      part: one.part,
      at: one.at.map(({ x, y }) => ({ from_left_mm: x, from_front_mm: y })),
      height_mm: one.height,
      lowest_mm: one.lowest,
      highest_mm: one.highest,
    })),
    lids: plan.setOut.lids.map((d) => ({
      part: d.part,
      on: d.back,
      hinge: d.hinge,
      hinges_mm: d.hinges,
      screw: d.screw,
      screw_length_mm: d.screwLength,
      screws_per_hinge: d.screwsPerHinge,
      gap_mm: d.gap,
      kg: d.kg,
      moment_n_m: d.momentNm,
      stays: d.stays && { id: d.stays.id, count: d.stays.count, hold_n_m: d.stays.holdNm },
    })),
    drawers: plan.setOut.drawers.map((d) => ({
      name: d.name,
      parts: d.parts,
      joint: d.joint,
      bottom_fitting: d.bottomFitting,
      hang: d.hang,
      posts: d.posts,
      gap_mm: d.gap,
      beside_mm: d.beside,
      inside: { width_mm: d.inside.width, depth_mm: d.inside.depth },
      length_mm: d.length,
      runner: d.runner && {
        id: d.runner.id,
        line_mm: d.runner.line,
        height_mm: d.runner.height,
        case_screws_mm: d.runner.caseScrews,
        drawer_screws_mm: d.runner.drawerScrews,
        screw: d.runner.screw,
        screw_length_mm: d.runner.screwLength,
      },
      wooden_runners: d.wooden && {
        parts: [d.wooden.left, d.wooden.right],
        up_mm: d.wooden.up,
        groove: { width_mm: d.wooden.width, depth_mm: d.wooden.depth },
      },
      centre_runner: d.centre && {
        runner: d.centre.runner,
        guides: d.centre.guides,
        play_mm: d.centre.play,
      },
      travel_mm: d.travel,
    })),
    pinned: plan.setOut.pinned.map((s) => ({
      part: s.part,
      posts: s.posts,
      pin: s.pin,
      pins: s.pins,
      hole: { diameter_mm: s.hole.diameter, depth_mm: s.hole.depth },
      level: s.level,
      above_hole_mm: s.above,
      height_mm: s.height,
      clearance_mm: s.clearance,
    })),
    sliding_doors: plan.setOut.sliding.map((s) => ({
      record: s.record,
      parts: s.leaves.map((d) => d.part),
      tracks: s.leaves.map((d) => d.track + 1),
      below: s.below,
      above: s.above,
      opening: { width_mm: s.opening.width, height_mm: s.opening.height },
      groove: { width_mm: s.groove.width, upper_mm: s.groove.upper, lower_mm: s.groove.lower },
      engagement_mm: s.engagement,
      lift_mm: s.lift,
      gap_mm: s.gap,
      overlap_mm: s.overlap,
      opens_mm: s.opens,
      closes_at_once: s.closable,
    })),
    fits: fitsReport(plan),
    breakdown: breakdownReport(breakdown),
    steps: stepsReport(plan.build),
    schedule: scheduleReport(plan.build),
    finishing: plan.build.finishing && finishReport(plan.build.finishing),
    dry_fit: fitReport(plan.dryFit),
    mass_kg: Math.round(plan.mass.kg * 10) / 10,
    hours: { active: plan.hours.active, waiting: plan.hours.waiting, by_stage: plan.hours.byStage },
    costs: plan.costs,
    snags: plan.snags,
  };
}

/** How the stock is cut up, as a report. */
export function breakdownReport(breakdown: Breakdown): Report {
  return {
    lots: breakdown.lots.map(lotReport),
    buy: breakdown.purchases,
    left: breakdown.leftovers.map((l) => ({
      name: l.name,
      sheet: l.sheet,
      lot: l.lot,
      length_mm: l.length,
      width_mm: l.width,
    })),
    spares: breakdown.spares.map((s) => ({ part: s.part.id, from: s.from, name: s.name })),
    test_pieces: breakdown.testPieces,
    missing: breakdown.missing.map((m) => ({ part: m.part.id, why: m.why })),
  };
}

function lotReport(lot: LotBreakdown): Report {
  return {
    lot: lot.lot.id,
    kerf_mm: lot.problem.kerf,
    verified: lot.verdict.holds,
    proven: lot.plan.proven,
    ended_by_clock: lot.plan.endedByClock,
    sheets: lot.sheets.map(sheetReport),
  };
}

function sheetReport(sheet: PlannedSheet): Report {
  return {
    name: sheet.name,
    stock: sheet.source.stock.id,
    on_rack: sheet.source.onRack,
    good_faces: goodFacesOf(sheet.source.stock),
    length_mm: sheet.source.length,
    width_mm: sheet.source.width,
    flaws: sheet.source.flaws.map((f) => ({
      name: f.name,
      x_mm: f.x,
      y_mm: f.y,
      length_mm: f.length,
      width_mm: f.width,
    })),
    cuts: nodeReport(sheet.root),
  };
}

function nodeReport(node: PlannedNode): Report {
  const area = { x_mm: node.x, y_mm: node.y, length_mm: node.length, width_mm: node.width };
  if (node.kind === 'piece') return { ...area, piece: node.part.mark, turned: node.turned };
  if (node.kind === 'left') return { ...area, left: true, name: node.name };
  const cut = { across: node.across, at_mm: node.at, ...(node.yard ? { yard: true } : {}) };
  return { ...area, cut, parts: node.parts.map(nodeReport) };
}
