"""How a certificate gets onto a phone and off it again, step by step for both families of phones.

The order and the names of the menus are those of Android 11 and later and of iOS 15 and later; makers
change them a little, so each step also says what to search for. That Android wants a screen lock and
keeps a warning, that only Safari takes a profile in, what Lockdown Mode refuses, and how the menus are
called in Spanish, is from memory.
"""

from typing import NamedTuple


class Step(NamedTuple):
    """One thing to do: ids of its messages, the picture that shows where and its height at a width of 288."""

    title: str
    words: str
    picture: str
    alt: str
    height: int


class Family(NamedTuple):
    """The phones of one system, as ids of messages; these take the installation's `file` and `authority`."""

    id: str
    title: str
    steps: tuple[Step, ...]
    after: str
    removal: str


ANDROID = Family(
    "android",
    "serving-android",
    (
        Step(
            "serving-android-file",
            "serving-android-file-words",
            "android-file",
            "serving-android-file-picture",
            118,
        ),
        Step(
            "serving-android-settings",
            "serving-android-settings-words",
            "android-settings",
            "serving-android-settings-picture",
            190,
        ),
        Step(
            "serving-android-warning",
            "serving-android-warning-words",
            "android-warning",
            "serving-android-warning-picture",
            176,
        ),
        Step(
            "serving-android-choose",
            "serving-android-choose-words",
            "android-choose",
            "serving-android-choose-picture",
            150,
        ),
    ),
    "serving-android-after",
    "serving-android-removal",
)

IPHONE = Family(
    "iphone",
    "serving-iphone",
    (
        Step(
            "serving-iphone-allow",
            "serving-iphone-allow-words",
            "iphone-allow",
            "serving-iphone-allow-picture",
            150,
        ),
        Step(
            "serving-iphone-profile",
            "serving-iphone-profile-words",
            "iphone-profile",
            "serving-iphone-profile-picture",
            150,
        ),
        Step(
            "serving-iphone-trust",
            "serving-iphone-trust-words",
            "iphone-trust",
            "serving-iphone-trust-picture",
            150,
        ),
    ),
    "serving-iphone-after",
    "serving-iphone-removal",
)

FAMILIES = (ANDROID, IPHONE)


def family_of(user_agent: str) -> str:
    """Returns which family a browser says it runs on, or nothing."""
    if "Android" in user_agent:
        return ANDROID.id
    return IPHONE.id if "iPhone" in user_agent or "iPad" in user_agent else ""
