import { version } from '../../core/version';
import type { CheckedFile } from '../checked-file';

/** Version of docs/check-findings.schema.json: the first number changes where readers must change. */
export const SCHEMA_VERSION = '1.0';

/** The result of a check as data; docs/check-findings.schema.json describes it. */
export const jsonReport = (files: readonly CheckedFile[], tolerance: number): object => ({
  schemaVersion: SCHEMA_VERSION, joulewright: version, tolerance,
  files: files.map(({ file, error, sha256, formulas, checked, notChecked, findings, changes, notices }) => ({
    file, ...(error === undefined ? {} : { error }), ...(sha256 === undefined ? {} : { sha256 }), formulas, checked, notChecked, findings, changes, notices,
  })),
});
