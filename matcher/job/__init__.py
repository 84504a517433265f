"""The document of one job: what a user entered, part by part; nothing that can be worked out again."""

from matcher.job.document import Attachment, Fallback, Given, Job, Listing, Reading

__all__ = ["Attachment", "Fallback", "Given", "Job", "Listing", "Reading"]
