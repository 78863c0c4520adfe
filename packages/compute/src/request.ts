import type { LengthUnit, UpAxis } from '@coveline/model';
import type { SiteChanges } from '@coveline/project';
import type { MeasureName, Site, SurveyRequest, SurveyResult, SurveySettings, Tilt } from '@coveline/survey';

/** What to read and how to survey it. */
export interface FileSurveyRequest {
  readonly path: string;
  /** Name by which the format is told, where `path` does not end in it. */
  readonly fileName?: string;
  /** Axis of the file that points up. Default z. */
  readonly up?: UpAxis;
  /** Unit of files that carry none. */
  readonly unit?: LengthUnit;
  /** Largest distance between a curved face and its triangles. */
  readonly deviation_mm?: number;
  /** Stands the machine out of level; model and places are told level again. */
  readonly tilt?: Tilt;
  /** Standing liquid over tilts about the way the machine stands. */
  readonly tiltRange?: SurveyRequest['tiltRange'];
  /** All when absent. */
  readonly measures?: readonly MeasureName[];
  readonly settings?: Partial<SurveySettings>;
  /** What people said of the site; everything else of it is proposed from the model. */
  readonly site?: SiteChanges;
  /** Threads that survey at the same time, 1 to 15. Default: the cores of the machine, 4 at most, 1 for small models. */
  readonly threads?: number;
  /** Largest file that is read. Default 512. */
  readonly size_MB?: number;
}

/** What the child says about its run; model and outcome lie in the folder. */
export interface FileSurveySummary {
  /** Of the file. */
  readonly sha256: string;
  readonly fileBytes: number;
  readonly seconds: { readonly read: number; readonly survey: number };
  readonly peakMemory_MB: number;
}

/** What `survey.json` holds: the result with the site that the survey went by. */
export interface SiteSurveyResult extends SurveyResult {
  readonly site?: Site;
}

/** The packed model, +Z up, beside the files of the outcome. */
export const modelFile = 'model.bin';
/** A `FileSurveySummary`. */
export const summaryFile = 'summary.json';
