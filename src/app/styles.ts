import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '@fontsource-variable/bitter/wght.css';
import './tokens.css';
import './controls.css';
import './desk.css';
import './stage.css';
import './demo.css';
import './narrow.css';
