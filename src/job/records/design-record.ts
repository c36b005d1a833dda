import * as v from 'valibot';
import { BackRecord } from './back.ts';
import { BaseRecord } from './base.ts';
import { CaseRecord } from './case.ts';
import { DividerRecord } from './divider.ts';
import { EdgingRecord } from './edging.ts';
import { OpeningRecord } from './opening.ts';
import { PieceRecord } from './piece.ts';
import { ShelfRecord } from './shelf.ts';
import { TopRecord } from './top.ts';

/** Any record of a design. */
export const DesignRecord = v.variant('kind', [
  PieceRecord,
  CaseRecord,
  OpeningRecord,
  DividerRecord,
  ShelfRecord,
  BackRecord,
  TopRecord,
  BaseRecord,
  EdgingRecord,
]);
export type DesignRecord = v.InferOutput<typeof DesignRecord>;
export type RecordKind = DesignRecord['kind'];
/** The record type of one kind. */
export type RecordOf<K extends RecordKind> = Extract<DesignRecord, { kind: K }>;
