'use strict';
(() => {
  const BAR = 25;
  const OFF = 0;
  const MOVES = /^(\w+(?:\/\w+\*?)+)(?:\((\d{1,2})\)(\*?))?$/;
  const EXAMPLE = 'Write it like 8/5 6/5, 13/7*, bar/22 or 6/off(2).';

  /* What is wrong with an answer, in words for the one who gave it. */
  class Mistake extends Error {}

  /* ---- A play as written: hops of single checkers, and places where it claims to hit. ---- */

  const place = (name, word) => {
    if (name === 'b' || name === 'bar') return BAR;
    if (name === 'o' || name === 'off') return OFF;
    if (/^\d{1,2}$/.test(name) && Number(name) <= BAR) return Number(name);
    throw new Mistake(`“${name}” in “${word}” is no point: use 1 to 24, bar or off.`);
  };

  const read = (text) => {
    const tidy = text.trim().toLowerCase()
      .replace(/[\s,;]+/g, ' ').replace(/ ?\/ ?/g, '/').replace(/ (?=[*(])/g, '').trim();
    const hops = [];
    const stars = new Set();
    if (tidy === '') throw new Mistake(EXAMPLE);
    for (const word of tidy.split(' ')) {
      const moves = MOVES.exec(word);
      if (!moves) throw new Mistake(`“${word}” is no move of a checker. ${EXAMPLE}`);
      const times = moves[2] === undefined ? 1 : Number(moves[2]);
      if (times < 1 || times > 4) throw new Mistake(`“${word}”: a roll moves one to four checkers.`);
      const stops = (moves[1] + (moves[3] || '')).split('/');
      for (let n = 0; n < times; n++) {
        let from = place(stops[0], word);
        for (const stop of stops.slice(1)) {
          const to = place(stop.replace('*', ''), word);
          if (from <= to) throw new Mistake(`“${word}” goes the wrong way: checkers move to lower points.`);
          hops.push({ from, to });
          if (stop.endsWith('*')) stars.add(to);
          from = to;
        }
      }
    }
    return { hops, stars };
  };

  /* Whether the dice can be given to the hops, each die to one of them, so that all reach their ends. */
  const fits = (hops, dice) => {
    const open = hops.findIndex((hop) => hop.from > hop.to);
    if (open < 0) return true;
    const { from, to } = hops[open];
    return dice.some((die, d) => {
      const reached = Math.max(OFF, from - die);
      if (reached < to) return false;
      const rest = hops.map((hop, h) => (h === open ? { from: reached, to } : hop));
      return fits(rest, dice.filter((_, other) => other !== d));
    });
  };

  const same = (some, others) => some.every((count, at) => count === others[at]);

  const within = (some, others) => [...some].every((each) => others.has(each));

  /* The choice that a text means. A checker hits nothing on its way if it can, unless a star says so. */
  const find = (question, text) => {
    const { hops, stars } = read(text);
    const roll = question.dice.slice(0, 2).join('-');
    if (!fits(hops, question.dice)) throw new Mistake(`The dice do not play that: you have rolled ${roll}.`);
    const after = question.before.slice();
    for (const { from, to } of hops) {
      after[from]--;
      after[to]++;
    }
    const empty = after.findIndex((count) => count < 0);
    if (empty >= 0) {
      throw new Mistake(`You have not so many checkers on ${empty === BAR ? 'the bar' : empty}.`);
    }
    const stops = new Set(hops.map((hop) => hop.to));
    const hit = question.blots.filter((blot) => stops.has(blot));
    const leads = question.choices.filter((choice) => same(choice.after, after) && within(hit, new Set(choice.hits)));
    if (leads.length === 0) {
      throw new Mistake(`That is no legal play of ${roll}: a point is blocked, a checker is on the bar or not home yet,`
        + ' or more of the roll can be played.');
    }
    const readings = [
      (hits) => within(hits, stars) && within(stars, hits),
      (hits) => within(stars, hits) && within(hits, stops),
      (hits) => within(stars, hits),
    ];
    for (const reading of readings) {
      const meant = leads.filter((choice) => reading(new Set(choice.hits)));
      if (meant.length === 1) return meant[0];
      if (meant.length > 1) {
        throw new Mistake(`That can be ${meant.map((choice) => choice.text).join(' or ')}: write the point on the way.`);
      }
    }
    throw new Mistake('Nothing is hit there: leave the star out.');
  };

  /* ---- The page. ---- */

  const questions = JSON.parse(document.getElementById('drill').textContent);
  const tally = document.getElementById('tally');
  const states = questions.map(() => ({ tried: false, solved: false, first: false, shown: false }));

  const count = (which) => states.filter((state) => state[which]).length;

  const showTally = () => {
    const done = states.every((state) => state.solved || state.shown);
    tally.textContent = `${count('solved')} of ${states.length} solved, ${count('first')} at the first try`
      + (done ? '. That was the last one.' : '.');
  };

  const amount = (choice) => `${choice.given}: ${choice.grade}`;

  const right = (question) => {
    const [best, next] = question.choices;
    const other = question.dice ? `The next best, ${next.text},` : next.text;
    return `Right: ${best.text}. ${other} gives away ${amount(next)}.`;
  };

  const start = (question, state, section) => {
    const form = section.querySelector('form');
    const input = form.querySelector('input');
    const feedback = form.querySelector('.feedback');
    const solution = section.querySelector('.solution');

    const tell = (kind, text) => {
      feedback.className = `feedback ${kind}`;
      feedback.textContent = text;
    };

    const judge = (choice) => {
      const best = choice === question.choices[0];
      state.first = state.first || (best && !state.tried && !state.shown);
      state.solved = state.solved || (best && !state.shown);
      state.tried = true;
      if (best) {
        tell('good', right(question));
        solution.open = true;
      } else {
        tell('bad', `${choice.text} gives away ${amount(choice)}. Try again, or unfold the answer.`);
      }
      showTally();
    };

    form.addEventListener('submit', (event) => {
      event.preventDefault();
      try {
        judge(input
          ? find(question, input.value)
          : question.choices.find((choice) => choice.text === event.submitter.value));
      } catch (mistake) {
        if (!(mistake instanceof Mistake)) throw mistake;
        tell('unclear', mistake.message);
      }
    });

    solution.addEventListener('toggle', () => {
      if (solution.open && !state.solved) {
        state.shown = true;
        showTally();
      }
    });
  };

  document.querySelectorAll('.scripted').forEach((part) => { part.hidden = false; });
  tally.hidden = false;
  document.getElementById('unscripted').hidden = true;
  document.querySelectorAll('main > section').forEach((section, n) => start(questions[n], states[n], section));
  showTally();
})();
