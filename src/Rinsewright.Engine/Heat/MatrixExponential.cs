using System.Numerics;

namespace Rinsewright.Engine.Heat;

/// <summary>
/// exp(A t) of a small matrix by scaling and squaring: halve t until the norm is below 1/2, add up the Taylor series there, square back. The matrices of a slab have no
/// positive eigenvalue, so that squaring does not grow the error.
/// </summary>
internal static class MatrixExponential
{
    // 0.5^17/17! = 2e-20: below the last digit with room to spare.
    private const int Terms = 16;

    /// <summary>Replaces <paramref name="matrix"/> by exp(matrix · time).</summary>
    /// <param name="matrix">n² numbers, row by row.</param>
    /// <param name="n">Rows.</param>
    /// <param name="time">Factor, not negative.</param>
    /// <param name="first">Room for n² numbers.</param>
    /// <param name="second">Room for n² numbers.</param>
    public static void Of(Span<double> matrix, int n, double time, Span<double> first, Span<double> second)
    {
        double norm = 0;
        for (var i = 0; i < n; i++)
        {
            double row = 0;
            for (var j = 0; j < n; j++)
            {
                row += Math.Abs(matrix[(i * n) + j]);
            }

            norm = Math.Max(norm, row * time);
        }

        var squarings = 0;
        var scale = time;
        while (norm > 0.5)
        {
            norm /= 2;
            scale /= 2;
            squarings++;
        }

        var size = n * n;
        var sum = first[..size];
        var other = second[..size];
        for (var k = 0; k < size; k++)
        {
            matrix[k] *= scale;
        }

        // Horner: 1 + X(1 + X/2 (1 + X/3 (…)))
        Identity(sum, n);
        for (var term = Terms; term >= 1; term--)
        {
            Multiply(matrix, sum, other, n);
            for (var k = 0; k < size; k++)
            {
                sum[k] = other[k] / term;
            }

            for (var i = 0; i < n; i++)
            {
                sum[(i * n) + i] += 1;
            }
        }

        for (var k = 0; k < squarings; k++)
        {
            Multiply(sum, sum, other, n);
            other.CopyTo(sum);
        }

        sum.CopyTo(matrix);
    }

    private static void Identity(Span<double> matrix, int n)
    {
        matrix.Clear();
        for (var i = 0; i < n; i++)
        {
            matrix[(i * n) + i] = 1;
        }
    }

    private static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> into, int n)
    {
        for (var i = 0; i < n; i++)
        {
            var factors = a.Slice(i * n, n);
            var row = into.Slice(i * n, n);
            var j = 0;
            // Several columns at a time, each added up in the same order as one alone: the digits do not depend on how many.
            for (; j <= n - Vector<double>.Count; j += Vector<double>.Count)
            {
                var total = Vector<double>.Zero;
                for (var k = 0; k < n; k++)
                {
                    // Most of a slab's matrix is 0.
                    if (factors[k] != 0)
                    {
                        total += factors[k] * new Vector<double>(b[((k * n) + j)..]);
                    }
                }

                total.CopyTo(row[j..]);
            }

            for (; j < n; j++)
            {
                double total = 0;
                for (var k = 0; k < n; k++)
                {
                    total += factors[k] * b[(k * n) + j];
                }

                row[j] = total;
            }
        }
    }
}
