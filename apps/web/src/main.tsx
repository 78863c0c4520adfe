import '@fontsource-variable/source-sans-3';
import './styles/sheet.css';
import './styles/base.css';
import './styles/controls.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { applySheet, onSheetChange } from './state/preferences.ts';

applySheet();
onSheetChange(applySheet);

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
