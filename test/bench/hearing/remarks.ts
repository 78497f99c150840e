/** Short remarks of one to four words that people make in a shop, to each other, to the dog, to the wood; none of them a request to the bench. */
export const REMARKS: readonly string[] = `thank you very much|see you tomorrow|not now|what a day|come in|i am nearly done here|where did i put it|the kettle is on|who was that|hold the door
it is raining again|call me later|oh dear|turn the heater on|my hands are cold|never again|how was school|five more people came|dinner is ready|ouch|the phone is ringing|tell her i'm late
nice piece of wood|where is the broom|mind the cat|on the shelf|good evening|easy does it|there we go|that's better|just a second|give it a rest|wait for me|pass the salt|is it tuesday|over here
mind your fingers|the glue is cold|where's my apron|watch your step|too much coffee|don't drop it|lift with me|one two three|ready when you are|it smells nice|somebody's at the door|hello there|bless you
good boy|sit down|get off that|out you go|i can't see|find my glasses|what was that|are you sure|maybe later|of course not|you never know|not bad at all|i give up|look at this|it's stuck|it slipped
where were we|that's a shame|no way|fair enough|same again tomorrow|what's this|who left this here|need more light|mother called|lunch is ready|half a minute|cup of tea|with sugar please|two lumps|it's snowing
is the radio on|turn that down|nice song|i like it|the wind is up|shut the window|feel that edge|sharp enough|too rough|smooth as glass|sand it again|more wax|wipe it off|clean rag|where's the oil
hand plane please|use the other one|the big hammer|not so hard|gently now|a little left|a little right|down a touch|steady on|nearly home|last one today|see the grain|pretty board|what species is that|cherry or walnut
knots everywhere|it's warped|bow and twist|hold it still|squeeze it tight|not too tight|let it dry|it's still wet|sticky fingers|wash your hands|sweep the floor|empty the bin|dust in my eye|cover your ears
put your mask on|call the doctor|only a scratch|where's the plaster|i'm bleeding|it's nothing|stop laughing|you're joking|very funny|that's the spirit|well done you|what do they want|who's calling|wrong number
it's for you|tell them no|next week then|monday morning|half past four|quarter to nine|ten past six|at seven o'clock|about thirty dollars|forty years ago|sixteen of them|fifteen people|a hundred times|both of us`.split(/[|\n]/);
