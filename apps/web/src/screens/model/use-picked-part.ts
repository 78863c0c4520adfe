import { useEffect } from 'react';
import { setView } from '../../stage/view-state.ts';
import { useViewer } from '../../stage/viewer-context.ts';

/** A click on a part in the view chooses it. */
export function usePickedPart(): void {
  const viewer = useViewer();
  useEffect(() => viewer?.on('pick', (pick) => setView({ chosen: pick ? [pick.part] : [] })), [viewer]);
}
