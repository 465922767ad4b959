"""The steps one by one, as somebody with paper in both hands goes through them."""

import pytest
from pypdfium2 import PdfDocument

pytestmark = pytest.mark.browser

PATH = "recipes/window-seat/steps.html"


def shown(page, address, fragment=""):
    page.goto(f"{address}/{PATH}{fragment}")
    page.wait_for_selector(".one-by-one")
    return page


def step(page) -> str:
    (now,) = page.locator(".screen:visible").all()
    return now.get_attribute("data-step")


def steps(page) -> list[str]:
    return page.locator(".screen").evaluate_all("all => all.map(each => each.dataset.step)")


def test_first_what_is_needed_then_every_step_then_photographs(page, address):
    shown(page, address)
    names = steps(page)
    total = int(page.locator(".stepping").get_attribute("data-total"))
    assert names[0] == "start" and names[-1] == "done"
    assert [name for name in names if name.isdigit()] == [str(number) for number in range(1, total + 1)]
    assert "The blade is sharp" in page.locator(".screen:visible").inner_text()
    walked = [step(page)]
    for _ in names[1:]:
        page.keyboard.press("ArrowRight")
        walked.append(step(page))
    assert walked == names
    assert page.get_by_role("button", name="Next").is_disabled()


def test_cautions_come_before_what_they_belong_to(page, address):
    shown(page, address)
    names = steps(page)
    texts = page.locator(".screen").evaluate_all("all => all.map(each => each.textContent)")
    glue = names.index("glue")
    assert "Lay all pieces out before you glue" in texts[glue]
    assert all("Cut " in text for text in texts[1:glue]) and all("Piece " in text for text in texts[glue + 1 : -1])


@pytest.mark.parametrize("key", ["ArrowRight", " "])
def test_keys_lead_on_and_back(page, address, key):
    shown(page, address)
    page.keyboard.press(key)
    assert step(page) == "1" and page.locator("[role=status]").inner_text().startswith("Step 1 of ")
    page.keyboard.press("Shift+ " if key == " " else "ArrowLeft")
    assert step(page) == "start"


def test_home_and_end(page, address):
    shown(page, address, "#step=2")
    page.keyboard.press("End")
    assert step(page) == "done"
    page.keyboard.press("Home")
    assert step(page) == "start"


def test_buttons_lead_on_and_the_space_bar_presses_them(page, address):
    shown(page, address)
    following = page.get_by_role("button", name="Next")
    following.click()
    assert step(page) == "1"
    following.focus()
    page.keyboard.press(" ")
    assert step(page) == "2"
    page.get_by_role("button", name="Back", exact=True).click()
    assert step(page) == "1"


def test_a_swipe_turns_and_scrolling_does_not(browser, address):
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True, is_mobile=True)
    page = context.new_page()
    shown(page, address)
    client = context.new_cdp_session(page)

    def drag(start, end):
        client.send(
            "Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [dict(zip("xy", start, strict=True))]}
        )
        client.send(
            "Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [dict(zip("xy", end, strict=True))]}
        )
        client.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})

    drag((300, 300), (80, 310))
    page.wait_for_function("location.hash === '#step=1'")
    drag((200, 400), (190, 200))
    page.wait_for_timeout(100)
    assert step(page) == "1"
    drag((80, 300), (300, 310))
    page.wait_for_function("location.hash === '#step=start'")
    context.close()


def test_the_place_is_kept_on_the_device_and_in_the_address(page, address):
    shown(page, address)
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    assert page.evaluate("location.hash") == "#step=3"
    page.goto(f"{address}/index.html")
    shown(page, address)
    assert step(page) == "3"
    page.goto(f"{address}/index.html")
    shown(page, address, "#step=5")
    assert step(page) == "5"


def test_it_works_where_nothing_can_be_kept(browser, site):
    context = browser.new_context()
    context.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } })")
    page, wrong = context.new_page(), []
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.goto((site / PATH).as_uri())
    page.keyboard.press("ArrowRight")
    assert step(page) == "1"
    page.reload()
    assert step(page) == "1"  # by the address
    assert page.evaluate("navigator.serviceWorker?.controller ?? null") is None
    context.close()
    assert wrong == []


def test_the_unit_changes_and_the_step_stays(page, address):
    shown(page, address, "#step=2")
    large = page.locator(".screen:visible .large").inner_text()
    page.get_by_role("button", name="Millimetres").click()
    page.wait_for_url("**/steps-mm.html#step=2&unit=mm")
    page.wait_for_selector(".one-by-one")
    assert step(page) == "2" and "in" in large and "mm" in page.locator(".screen:visible .large").inner_text()
    page.goto(f"{address}/index.html")
    page.goto(f"{address}/{PATH}")
    page.wait_for_url("**/steps-mm.html*")


def test_the_reading_can_be_read_from_a_metre_away(page, address):
    """Text of half a degree, 9 mm, is read without effort; a CSS pixel is about a quarter of a millimetre."""
    shown(page, address, "#step=1")
    large = page.locator(".screen:visible .large")
    assert large.evaluate("each => parseFloat(getComputedStyle(each).fontSize)") * 25.4 / 96 > 9
    assert page.locator(".screen:visible p").last.evaluate("each => parseFloat(getComputedStyle(each).fontSize)") >= 28


def test_the_screen_is_kept_awake_between_first_and_last_and_let_go(browser, address):
    context = browser.new_context()
    context.add_init_script(
        """window.locks = { asked: 0, freed: 0 };
        Object.defineProperty(navigator, "wakeLock", { value: { request: async () => {
          window.locks.asked += 1;
          const lock = new EventTarget();
          lock.release = async () => { window.locks.freed += 1; lock.dispatchEvent(new Event("release")); };
          return lock;
        } } });"""
    )
    page = context.new_page()
    shown(page, address)
    assert page.evaluate("window.locks") == {"asked": 0, "freed": 0}
    page.keyboard.press("ArrowRight")
    page.wait_for_function("window.locks.asked === 1")
    page.wait_for_selector("text=The screen stays awake.")
    page.get_by_role("button", name="Keep the screen awake").click()
    page.wait_for_function("window.locks.freed === 1")
    page.wait_for_selector("text=The screen may go dark.")
    page.get_by_role("button", name="Keep the screen awake").click()
    page.wait_for_function("window.locks.asked === 2")
    page.keyboard.press("End")
    page.wait_for_function("window.locks.freed === 2")
    context.close()


def test_who_steps_fast_leaves_no_lock_behind(browser, address):
    context = browser.new_context()
    context.add_init_script(
        """window.held = 0;
        Object.defineProperty(navigator, "wakeLock", { value: { request: async () => {
          await new Promise((done) => { setTimeout(done, 100); });
          window.held += 1;
          const lock = new EventTarget();
          lock.release = async () => { window.held -= 1; lock.dispatchEvent(new Event("release")); };
          return lock;
        } } });"""
    )
    page = context.new_page()
    shown(page, address)
    for _ in range(4):
        page.keyboard.press("ArrowRight")
    page.wait_for_function("window.held === 1")
    page.wait_for_timeout(500)
    assert page.evaluate("window.held") == 1
    page.keyboard.press("End")
    page.wait_for_function("window.held === 0")
    context.close()


@pytest.mark.parametrize("has_script", [True, False])
def test_print_and_pages_without_script_are_a_plain_list(browser, address, has_script):
    context = browser.new_context(java_script_enabled=has_script)
    page = context.new_page()
    page.goto(f"{address}/{PATH}")
    if has_script:
        page.wait_for_selector(".one-by-one")
    else:
        assert page.locator(".screen:visible").count() == page.locator(".screen").count()
        assert not page.get_by_role("button", name="Next").is_visible()
    printed = "".join(sheet.get_textpage().get_text_range() for sheet in PdfDocument(page.pdf()))
    total = page.locator(".screen[data-step]").count() - 3
    context.close()
    printed = "".join(printed.split())  # what the reader takes for a space depends on kerning
    cuts = sum(f"Cut{number}" in printed for number in range(1, total + 1))
    pieces = sum(f"Piece{number}" in printed for number in range(1, total + 1))
    assert cuts + pieces == total and "Next" not in printed


@pytest.mark.parametrize("width", [360, 820, 1440])
def test_no_step_scrolls_sideways_or_hides_its_words(browser, address, width):
    page = browser.new_page(viewport={"width": width, "height": 800})
    shown(page, address)
    for _ in steps(page)[1:]:
        page.keyboard.press("ArrowRight")
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.locator(".screen:visible h2").is_visible()
    page.close()
