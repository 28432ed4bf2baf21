"""The success-run count against the published table."""

import pytest

from server.core.evidence.proof import success_run

# n = ln(1 - C) / ln(R) rounded up. 29, 59, 230: table at
# codingace.net/statistics/confidence_reliability_sample_size.html; the rest by the binomial.
TABLE = [
    (0.90, 0.90, 22), (0.95, 0.90, 29), (0.90, 0.95, 45), (0.95, 0.95, 59), (0.99, 0.95, 90),
    (0.90, 0.99, 230), (0.95, 0.99, 299), (0.99, 0.99, 459), (0.99, 0.90, 44), (0.80, 0.90, 16),
    (0.50, 0.90, 7),
]  # fmt: skip


@pytest.mark.parametrize(("confidence", "reliability", "count"), TABLE)
def test_success_run(confidence, reliability, count):
    assert success_run(confidence, reliability) == count
