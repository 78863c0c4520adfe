import { useEffect, useState } from 'react';
import { m } from '../messages/index.ts';
import { locale } from '../numbers/show.ts';
import { useViewer } from './viewer-context.ts';

const style = new Intl.NumberFormat(locale, { maximumSignificantDigits: 2 });

/** The scale of the picture at what is looked at, as on a drawing. Follows the camera on its own. */
export function CameraScale() {
  const viewer = useViewer();
  const [scale, setScale] = useState('1');
  useEffect(() => {
    if (!viewer) return;
    const follow = (state: { readonly scale: number }) => setScale(style.format(state.scale));
    follow(viewer.cameraState());
    return viewer.on('camera', follow);
  }, [viewer]);
  return <span>{m.view.scale(scale)}</span>;
}
