import './look/tokens.css';
import './look/controls.css';
import './look/dialogTables.css';
import './look/page.css';
import './look/panel.css';
import { startApp } from './app/app.ts';

startApp();
