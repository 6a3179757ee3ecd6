using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>The table over all sets of the present signs. Index S of a row stands for the set of the signs whose bits are 1 in S.</summary>
internal sealed class PresentSigns
{
    private readonly double[] chances;
    private readonly IReadOnlyList<Observed> present;
    private readonly (int Bit, double Strength)[][] reach;
    private readonly int size;

    internal PresentSigns(double[] chances, IReadOnlyList<Observed> present)
    {
        (this.chances, this.present, size) = (chances, present, 1 << present.Count);
        var links = new List<(int, double)>[chances.Length];
        for (var at = 0; at < present.Count; at++)
        {
            foreach (var (cause, strength) in present[at].Strengths.Where(link => link.Strength > 0))
            {
                (links[cause] ??= []).Add((1 << at, strength));
            }
        }

        reach = [.. links.Select(own => own?.ToArray() ?? [])];
    }

    internal Posterior Infer(double log, IReadOnlyList<double> priors)
    {
        // A cause that reaches none of them, and one that can’t hold, learns nothing from them.
        var linked = Enumerable.Range(0, chances.Length).Where(cause => reach[cause].Length > 0 && chances[cause] > 0).ToArray();
        // The table is large and soon thrown away; a rented one spares the collector.
        var table = ArrayPool<double>.Shared.Rent((linked.Length + 3) * size);
        try
        {
            Forwards(linked, table);
            var all = table[((linked.Length + 1) * size) - 1];
            return all > 0 ? new Posterior(Backwards(linked, table), log + Math.Log(all)) : Posterior.CannotBe(priors);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(table);
        }
    }

    private Span<double> Row(double[] table, int row) => table.AsSpan(row * size, size);

    /// <summary>Row n: how likely just the set S has been brought about by the leaks and the first n causes.</summary>
    private void Forwards(int[] linked, double[] table)
    {
        var first = Row(table, 0);
        first.Clear();
        first[0] = 1;
        for (var at = 0; at < present.Count; at++)
        {
            Push(first, 1 << at, present[at].Leak);
        }

        for (var n = 0; n < linked.Length; n++)
        {
            var next = Row(table, n + 1);
            Row(table, n).CopyTo(next);
            foreach (var (bit, strength) in reach[linked[n]])
            {
                Push(next, bit, strength);
            }

            Mix(Row(table, n), next, chances[linked[n]]);
        }
    }

    /// <summary>From the last cause to the first: how likely, from the set S on, the rest of the causes brings all about.</summary>
    private double[] Backwards(int[] linked, double[] table)
    {
        var result = chances.ToArray();
        var (rest, with) = (linked.Length + 1, linked.Length + 2);
        Row(table, rest).Clear();
        Row(table, rest)[^1] = 1;
        for (var n = linked.Length - 1; n >= 0; n--)
        {
            var chance = chances[linked[n]];
            Row(table, rest).CopyTo(Row(table, with));
            foreach (var (bit, strength) in reach[linked[n]])
            {
                Pull(Row(table, with), bit, strength);
            }

            var on = chance * Dot(Row(table, n), Row(table, with));
            var off = (1 - chance) * Dot(Row(table, n), Row(table, rest));
            result[linked[n]] = on / (on + off);
            Mix(Row(table, rest), Row(table, with), chance);
            (rest, with) = (with, rest);
        }

        return result;
    }

    /// <summary>Of what lacks the sign, this share gets it.</summary>
    private static void Push(Span<double> row, int bit, double strength)
    {
        if (bit < Vector<double>.Count)
        {
            for (var set = 0; set < row.Length; set = (set + bit + 1) & ~bit)
            {
                row[set | bit] += strength * row[set];
                row[set] *= 1 - strength;
            }

            return;
        }

        for (var from = 0; from < row.Length; from += 2 * bit)
        {
            var lacking = MemoryMarshal.Cast<double, Vector<double>>(row.Slice(from, bit));
            var having = MemoryMarshal.Cast<double, Vector<double>>(row.Slice(from + bit, bit));
            for (var at = 0; at < lacking.Length; at++)
            {
                having[at] += strength * lacking[at];
                lacking[at] *= 1 - strength;
            }
        }
    }

    /// <summary>The same seen from behind: whoever lacks the sign will have it with this chance.</summary>
    private static void Pull(Span<double> row, int bit, double strength)
    {
        if (bit < Vector<double>.Count)
        {
            for (var set = 0; set < row.Length; set = (set + bit + 1) & ~bit)
            {
                row[set] = ((1 - strength) * row[set]) + (strength * row[set | bit]);
            }

            return;
        }

        for (var from = 0; from < row.Length; from += 2 * bit)
        {
            var lacking = MemoryMarshal.Cast<double, Vector<double>>(row.Slice(from, bit));
            var having = MemoryMarshal.Cast<double, Vector<double>>(row.Slice(from + bit, bit));
            for (var at = 0; at < lacking.Length; at++)
            {
                lacking[at] = ((1 - strength) * lacking[at]) + (strength * having[at]);
            }
        }
    }

    /// <summary>The second row becomes what holds whether or not the cause does.</summary>
    private static void Mix(ReadOnlySpan<double> without, Span<double> with, double chance)
    {
        var at = 0;
        if (without.Length >= Vector<double>.Count)
        {
            var left = MemoryMarshal.Cast<double, Vector<double>>(without);
            var right = MemoryMarshal.Cast<double, Vector<double>>(with);
            for (var step = 0; step < left.Length; step++)
            {
                right[step] = ((1 - chance) * left[step]) + (chance * right[step]);
            }

            at = left.Length * Vector<double>.Count;
        }

        for (; at < without.Length; at++)
        {
            with[at] = ((1 - chance) * without[at]) + (chance * with[at]);
        }
    }

    private static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var sum = Vector<double>.Zero;
        var at = 0;
        if (left.Length >= Vector<double>.Count)
        {
            var one = MemoryMarshal.Cast<double, Vector<double>>(left);
            var other = MemoryMarshal.Cast<double, Vector<double>>(right);
            for (var step = 0; step < one.Length; step++)
            {
                sum += one[step] * other[step];
            }

            at = one.Length * Vector<double>.Count;
        }

        var total = Vector.Sum(sum);
        for (; at < left.Length; at++)
        {
            total += left[at] * right[at];
        }

        return total;
    }
}
