/** Every screen, registered. */
import './menu.ts';
import './step.ts';
import './stepInFull.ts';
import './steps.ts';
import './parts.ts';
import './part.ts';
import './size.ts';
import './why.ts';
import './record.ts';
import './reckoning.ts';
import './clocks.ts';
import './journal.ts';
import './settings.ts';
import './files.ts';
import './help.ts';
import './due.ts';
import './question.ts';
