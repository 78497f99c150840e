/** Every other screen: fetched while the first one is drawn already, and there before anything is answered. */
import './stepInFull.ts';
import './steps.ts';
import './parts.ts';
import './part.ts';
import './size.ts';
import './why.ts';
import './moved.ts';
import './record.ts';
import './reckoning.ts';
import './chopping.ts';
import './paper.ts';
import './clocks.ts';
import './edges.ts';
import './journal.ts';
import './settings.ts';
import './help.ts';
import './microphone.ts';
