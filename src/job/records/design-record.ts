import * as v from 'valibot';
import { MarginFormula, OpeningSizeText, SizeFormula } from '../typed.ts';
import { BackRecord } from './back.ts';
import { BaseRecord } from './base.ts';
import { CableRecord } from './cable.ts';
import { CaseRecord } from './case.ts';
import { DividerRecord } from './divider.ts';
import { DoorRecord } from './door.ts';
import { DrawersRecord } from './drawers.ts';
import { EdgingRecord } from './edging.ts';
import { FillerRecord } from './filler.ts';
import { FrontRecord } from './front.ts';
import { GroupRecord } from './group.ts';
import { HandleRecord } from './handle.ts';
import { HangingRecord } from './hanging.ts';
import { HolesRecord } from './holes.ts';
import { OpeningRecord } from './opening.ts';
import { PieceRecord } from './piece.ts';
import { PinsRecord } from './pins.ts';
import { PullRecord } from './pull.ts';
import { RoomRecord } from './room.ts';
import { ShelfRecord } from './shelf.ts';
import { SizeRecord } from './size.ts';
import { SlidingDoorsRecord } from './sliding-doors.ts';
import { ThingRecord } from './thing.ts';
import { TopRecord } from './top.ts';
import { TraysRecord } from './trays.ts';
import { VentRecord } from './vent.ts';

/** Any record of a design. */
export const DesignRecord = v.variant('kind', [
  PieceRecord,
  GroupRecord,
  CaseRecord,
  OpeningRecord,
  DividerRecord,
  ShelfRecord,
  PinsRecord,
  DrawersRecord,
  TraysRecord,
  BackRecord,
  TopRecord,
  ThingRecord,
  BaseRecord,
  EdgingRecord,
  CableRecord,
  VentRecord,
  HolesRecord,
  HandleRecord,
  PullRecord,
  FrontRecord,
  HangingRecord,
  SizeRecord,
  RoomRecord,
  FillerRecord,
  DoorRecord,
  SlidingDoorsRecord,
]);
export type DesignRecord = v.InferOutput<typeof DesignRecord>;
export type RecordKind = DesignRecord['kind'];
/** A record that belongs to another. */
export type ChildRecord = Exclude<DesignRecord, { kind: 'piece' | 'size' | 'room' }>;
/** The record type of one kind. */
export type RecordOf<K extends RecordKind> = Extract<DesignRecord, { kind: K }>;

/** Whether a record belongs to another; the piece, the named sizes and the room stand alone. */
export function isChild(record: DesignRecord): record is ChildRecord {
  return record.kind !== 'piece' && record.kind !== 'size' && record.kind !== 'room';
}

/** A field of a record that may hold a formula, and whether what it comes to may be nothing. */
export interface FormulaField {
  readonly field: string;
  readonly mayBeNothing: boolean;
}

/** The fields of a kind of record that may hold a formula. */
export function formulaFields(kind: RecordKind): readonly FormulaField[] {
  return FORMULA_FIELDS.get(kind) ?? [];
}

const FORMULAS: readonly unknown[] = [SizeFormula, MarginFormula, OpeningSizeText];
const FORMULA_FIELDS: ReadonlyMap<string, readonly FormulaField[]> = new Map(
  DesignRecord.options.map(({ entries }) => [
    entries.kind.literal,
    Object.entries(entries as Record<string, object>).flatMap(([field, entry]) => {
      const schema = 'wrapped' in entry ? entry.wrapped : entry;
      return FORMULAS.includes(schema) ? [{ field, mayBeNothing: schema === MarginFormula }] : [];
    }),
  ]),
);
