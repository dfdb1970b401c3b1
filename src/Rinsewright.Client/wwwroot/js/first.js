// The day as this device knew it last, until the program has started and read it anew. Links work; what changes something waits for the program. Its words come with it.
(() => {
  if (location.pathname !== new URL("day", document.baseURI).pathname) return;
  let kept;
  try {
    kept = JSON.parse(localStorage.getItem("rinsewright.day"));
  } catch {}
  if (kept?.version !== 2 || kept.language !== document.documentElement.lang) return;
  const { words } = kept;

  const make = (tag, className, ...inside) => {
    const element = document.createElement(tag);
    if (className) element.className = className;
    element.append(...inside);
    return element;
  };
  const svg = (tag, attributes) => {
    const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
    for (const name in attributes) element.setAttribute(name, attributes[name]);
    return element;
  };
  const shapes = {
    good: ["circle", { r: 6.4 }],
    near: ["path", { d: "M0 -6.8L7.2 5.6H-7.2z" }],
    bad: ["rect", { x: -5.9, y: -5.9, width: 11.8, height: 11.8 }],
    none: ["circle", { r: 5.4 }],
  };
  const row = (kind, address, name, about, word, end) => {
    const mark = svg("svg", { class: "mark", width: 16, height: 16, viewBox: "-8 -8 16 16", "aria-hidden": "true" });
    const [tag, shape] = shapes[kind];
    mark.append(svg(tag, { class: "sh " + kind, ...shape }));
    const link = make("a", "link-row", mark, make("span", "grow", make("b", "", name), make("span", "mut", about)), make("span", "line-end", make("b", "", word), make("span", "mut", end)));
    link.href = address;
    return make("li", "", link);
  };
  const panel = (title, rows) => make("section", "panel", make("h2", "", title, make("span", "", String(rows.length))), make("ul", "saved-list", ...rows));

  // The days have gone on since: what is due by now is told from the dates.
  const date = (from) => new Date(Date.now() + from * 864e5 - new Date().getTimezoneOffset() * 6e4).toISOString().slice(0, 10);
  const today = date(0);
  const months = words.months.split(" ");
  const say = (day) => (day ? `${+day.slice(8)}\u00a0${months[day.slice(5, 7) - 1]}\u00a0${day.slice(0, 4)}` : "");
  const due = kept.todo.filter(({ day }) => !day || day <= date(kept.ahead));
  const todo = due.map(({ day, address, kitchen, what }) => {
      const [kind, word] = !day ? ["none", words.open] : day < today ? ["bad", words.overdue] : day === today ? ["near", words.today] : ["good", words.coming];
      return row(kind, address, kitchen, what, word, say(day));
    });
  const failed = kept.failed.map(({ address, kitchen, machine, word }) => row("bad", address, kitchen, machine, word, ""));
  const panels = [];
  if (todo.length) panels.push(panel(words.due, todo));
  if (failed.length) panels.push(panel(words.failed, failed));
  if (!panels.length) return;
  const take = due.flatMap(({ take }) => take ?? []).map(({ what, where }) => make("li", "", what + " ", make("span", "mut", where)));
  if (take.length) panels.push(make("section", "panel", make("h2", "", words.take), make("ul", "part-list", ...take)));

  const head = make("header", "head", make("div", "grow", make("h1", "", words.title), make("p", "sub", say(today))));
  const main = make("main", "app", head, make("p", "notice", words.kept), ...panels);
  const first = make("div", "frame", main);
  first.id = "first";
  const app = document.getElementById("app");
  app.after(first);
  app.hidden = true;
  const seen = new MutationObserver(() => {
    if (app.querySelector("#due, #failed, #nothing, .stopped") || (app.querySelector(".head h1") && !location.pathname.endsWith("/day"))) {
      seen.disconnect();
      first.remove();
      app.hidden = false;
    }
  });
  seen.observe(app, { subtree: true, childList: true });
})();
