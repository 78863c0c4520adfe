import type { Viewer } from '@coveline/viewer';
import { createContext, useContext } from 'react';

/** The view on the screen; null before it is there, and where the browser shows no 3D graphics. */
export const ViewerContext = createContext<Viewer | null>(null);

export const useViewer = () => useContext(ViewerContext);
