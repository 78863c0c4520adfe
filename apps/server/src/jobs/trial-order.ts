/** What the child that tries drains and tilts is given: paths of blobs, and the pool. */
export interface TrialOrder {
  readonly model: string;
  readonly survey: string;
  readonly pool: string;
}
