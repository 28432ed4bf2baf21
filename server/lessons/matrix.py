"""Equations with a symmetric matrix as lists of rows, by its triangle (Cholesky)."""

from math import sqrt


def cholesky(matrix: list[list[float]]) -> list[list[float]] | None:
    """Returns the triangle whose square a matrix is, None where it has none."""
    size = range(len(matrix))
    root = [[0.0] * len(matrix) for _ in size]
    for c in size:
        for d in range(c + 1):
            rest = matrix[c][d] - sum(root[c][k] * root[d][k] for k in range(d))
            if c == d:
                if rest <= 1e-12:
                    return None
                root[c][c] = sqrt(rest)
            else:
                root[c][d] = rest / root[d][d]
    return root


def inverse(matrix: list[list[float]]) -> list[list[float]] | None:
    """Returns the inverse of a matrix, None where it is none of a maximum."""
    root = cholesky(matrix)
    if root is None:
        return None
    size = range(len(matrix))
    return [solved(root, [float(c == d) for d in size]) for c in size]


def solved(root: list[list[float]], right: list[float]) -> list[float]:
    """Returns what the matrix with this triangle times it makes the right side."""
    size, found = range(len(root)), list(right)
    for c in size:
        found[c] = (found[c] - sum(root[c][k] * found[k] for k in range(c))) / root[c][c]
    for c in reversed(size):
        rest = sum(root[k][c] * found[k] for k in range(c + 1, len(root)))
        found[c] = (found[c] - rest) / root[c][c]
    return found
