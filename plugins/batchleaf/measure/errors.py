"""The one error that reading a measure can raise."""


class MeasureError(ValueError):
    """A text that is no measure; the message is a sentence a maker can act on."""
