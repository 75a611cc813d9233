import './ui/look/tokens.css';
import './ui/look/controls.css';
import './ui/look/dialogTables.css';
import './ui/look/fields.css';
import './ui/look/page.css';
import './ui/look/presenter.css';
import './ui/look/panel.css';
import { startApp } from './app/app.ts';

startApp();
