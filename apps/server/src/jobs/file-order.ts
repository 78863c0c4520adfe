import type { Project } from '@coveline/project';

/** What the child that makes the PDF is given. Paths of blobs; the review lies in the folder of the run. */
export interface FileOrder {
  readonly project: Project;
  readonly revision: string;
  readonly model: string;
  readonly survey: string;
  readonly fields: string;
  readonly drawings: string;
  /** ISO date. */
  readonly today: string;
}

/** What the child says about the PDF that it leaves in the folder. */
export interface FileSummary {
  readonly warnings: readonly string[];
}

export const fileReview = 'review.json';
export const filePdf = 'file.pdf';
