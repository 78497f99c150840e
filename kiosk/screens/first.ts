/** The screens that may come first, or over any other: loaded with the page. */
import './menu.ts';
import './step.ts';
import './files.ts';
import './due.ts';
import './question.ts';
