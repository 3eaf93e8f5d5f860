/*
 * Wires the controls of the page to what they do. Nothing happens on pointer-down: an engine that sees
 * a label change under the pressed pointer forgets the click.
 */
const Controls = (() => {
  const { one, all, byId, say, phrase } = Ui;

  /** @param act the page's actions */
  function wire(act, data, articles) {
    document.documentElement.classList.add("plays");
    one(".desk").hidden = false;
    jump(act, data);
    articles.forEach((article, index) => {
      byId("Play" + index).addEventListener("click", () => act.toggle(index));
      article.addEventListener("click", (event) => {
        if (!event.target.closest("button, a, summary") && !Player.running()) {
          act.choose(index);
        }
      });
    });
    document.addEventListener("click", (event) => {
      const rung = event.target.closest(".rung");
      if (rung) {
        act.play(Number(rung.dataset.of), Number(rung.dataset.first));
      }
    });
    byId("Play").addEventListener("click", () => {
      const run = Player.running();
      act.toggle(run ? run.index : act.chosen());
    });
    tempo(act);
    switches(act);
    drawer(act, data);
    document.addEventListener("keydown", Keys.listener(act));
  }

  function jump(act, data) {
    const list = byId("Jump");
    data.parts.forEach((part, index) => {
      const number = document.querySelector(`[data-part="${index}"] h2 > .unseen`);
      const option = new Option((number ? number.textContent : "") + part.title, index);
      option.dir = "auto";
      list.add(option);
    });
    list.addEventListener("change", () => act.go(Number(list.value)));
  }

  function tempo(act) {
    byId("Slower").addEventListener("click", () => act.nudge(-1));
    byId("Faster").addEventListener("click", () => act.nudge(1));
    byId("Tap").addEventListener("click", () => act.tap());
    byId("Written").addEventListener("click", () => act.written());
    byId("Tempo").addEventListener("input", (event) => act.setRate(Number(event.target.value) / 100));
    const typed = byId("Bpm");
    typed.addEventListener("focus", () => typed.select());
    typed.addEventListener("change", () => {
      const wanted = typed.valueAsNumber;
      typed.blur();
      act.setTempo(wanted);
    });
  }

  function announced(id, key, change) {
    byId(id).addEventListener("change", () => {
      change(byId(id).checked);
      say(phrase(byId(id).checked ? "on" : "off", phrase(key)));
    });
  }

  function switches(act) {
    announced("Loop", "loop", (on) => Player.set("loop", on));
    announced("CountIn", "count-in", (on) => Player.set("countIn", on));
    announced("Follow", "following", (on) => Bead.follow(on));
    announced("Alone", "click-alone", (on) => Player.set("alone", on));
    announced("Click", "click-switch", () => {
      act.touchClick();
      act.setClick();
    });
    byId("ClickAs").addEventListener("change", () => {
      act.touchClick();
      byId("Click").checked = true;
      act.setClick();
      say(phrase("click", byId("ClickAs").selectedOptions[0].textContent));
    });
    all("[data-limb]").forEach((box) => {
      box.addEventListener("change", () => act.setLimb(Number(box.dataset.limb), box.checked));
    });
    byId("KitLevel").addEventListener("input", (event) => Player.set("kit", Number(event.target.value) / 100));
    byId("ClickLevel").addEventListener("input", (event) => Player.set("clicks", Number(event.target.value) / 100));
    // A switch pressed with the mouse gives the space bar back to "play".
    one(".desk").addEventListener("click", (event) => {
      const typed = event.target.closest("select, input[type=number]");
      if (event.detail > 0 && !typed && document.activeElement.closest(".desk")) {
        document.activeElement.blur();
      }
    });
  }

  function drawer(act, data) {
    byId("More").addEventListener("click", () => act.drawer(byId("Drawer").hidden));
    byId("Big").addEventListener("click", () => act.big());
    byId("Print").addEventListener("click", () => print());
    ["From", "To"].forEach((id) => {
      byId(id).addEventListener("change", () => {
        const index = act.chosen();
        const words = Practice.chooseBars(index, data.parts[index], id);
        act.again();
        say(words);
      });
    });
    announced("Climb", "trainer", (on) => {
      if (on && !byId("Loop").checked) {
        act.flip("Loop");
      }
      act.again();
    });
    ["ClimbFrom", "ClimbTo", "ClimbBy", "ClimbTimes"].forEach((id) => {
      byId(id).addEventListener("change", () => byId("Climb").checked && act.again());
    });
  }

  return { wire };
})();
