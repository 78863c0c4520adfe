import { useEffect, useState } from 'react';
import { locale } from '../numbers/show.ts';
import { useViewer } from './viewer-context.ts';

const style = new Intl.NumberFormat(locale, { maximumSignificantDigits: 2 });

/** The scale of the picture at what is looked at: "6" for 1 : 6. Follows the camera. */
export function useCameraScale(): string {
  const viewer = useViewer();
  const [scale, setScale] = useState('1');
  useEffect(() => {
    if (!viewer) return;
    const follow = (state: { readonly scale: number }) => setScale(style.format(state.scale));
    follow(viewer.cameraState());
    return viewer.on('camera', follow);
  }, [viewer]);
  return scale;
}
