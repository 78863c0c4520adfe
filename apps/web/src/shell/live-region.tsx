import { useAnnouncement } from '../state/announce.ts';

/** Where the page says things to a screen reader. */
export function LiveRegion() {
  return (
    <div className="unseen" role="status" aria-live="polite">
      {useAnnouncement()}
    </div>
  );
}
