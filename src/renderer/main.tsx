import '../domain/schemasWithoutEval.ts';
import '@fontsource-variable/alegreya/wght.css';
import '@fontsource-variable/alegreya/wght-italic.css';
import '@fontsource-variable/source-sans-3/wght.css';
import '@fontsource-variable/source-sans-3/wght-italic.css';
import './style/tokens.css';
import './style/global.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';

const root = document.getElementById('root');
if (!root) throw new Error('Expected index.html to hold an element with the id "root" but found none.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
