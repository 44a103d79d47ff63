"""The text for a video is copied by keyboard, and can be selected where nothing runs."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect

from browsing import Served

NAME = "projects/orchard-square-cards/"


def test_the_text_is_copied_by_keyboard(demo_site: Served, page: Page) -> None:
    """The clipboard holds the file that stands beside the page, and the page says that it does."""
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.goto(demo_site.url + NAME)
    page.locator(".for-video summary").focus()
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Copy the text").focus()
    page.keyboard.press("Enter")
    expect(page.locator(".for-video [role=status]")).to_have_text("Copied.")
    file = (demo_site.folder / NAME / "video.txt").read_bytes()
    assert b"\r" not in file
    assert page.evaluate("navigator.clipboard.readText()") == file.decode()


def test_without_scripts_the_text_is_there_to_be_selected(demo_site: Served, browser: Browser) -> None:
    """And no button that would do nothing."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(demo_site.url + NAME)
    page.locator(".for-video summary").click()
    expect(page.get_by_role("textbox", name="Text for the video")).to_be_visible()
    expect(page.locator("[data-copy]")).to_be_hidden()
    text = (demo_site.folder / NAME / "video.txt").read_text(encoding="utf-8")
    assert page.locator("#video-text").input_value() == text
    context.close()
