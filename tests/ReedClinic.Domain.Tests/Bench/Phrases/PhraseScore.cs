using System.Globalization;
using System.Text;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>How well labelled phrases were understood; README.md says how each figure is counted.</summary>
public sealed class PhraseScore
{
    private readonly StringBuilder differences = new();
    private int kindRight;
    private int kindOf;
    private int slotsRight;
    private int slotsOf;
    private int adjustments;
    private int recalled;

    private PhraseScore()
    {
    }

    public int Phrases { get; private set; }

    public int Exact { get; private set; }

    public int FalseAdjustments { get; private set; }

    /// <summary>Those of them that were read without a doubt whether they were done.</summary>
    public int UndoubtedFalseAdjustments { get; private set; }

    /// <summary>Labelled adjustments that were read, and with a doubt.</summary>
    public int Doubted { get; private set; }

    /// <summary>How often each kind was taken for which other; “-” is nothing.</summary>
    public Dictionary<string, int> Mistakes { get; } = [];

    public double Kind => Part(kindRight, kindOf);

    public double Slots => Part(slotsRight, slotsOf);

    public double AdjustmentsRecalled => Part(recalled, adjustments);

    /// <summary>Every phrase that was understood otherwise than labelled, both side by side.</summary>
    public string Differences => differences.ToString();

    public static PhraseScore Of(IEnumerable<Labelled> phrases) => Of(phrases, PhraseReader.Read);

    /// <summary>How well they are understood where phrases are read as is said.</summary>
    public static PhraseScore Of(IEnumerable<Labelled> phrases, Func<string, PhraseContext, PhraseReading> read)
    {
        var score = new PhraseScore();
        foreach (var labelled in phrases)
        {
            var entries = read(labelled.Phrase, PhraseCorpus.Context(labelled.Before, read)).Entries;
            score.Add(labelled, [.. entries.Select(PhraseCorpus.LineOf)], entries.Count(entry => entry.Kind is EntryKind.Adjustment && entry.Doubts.Contains(Doubt.Done)));
        }

        return score;
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Phrases} phrases, {Exact} exact; kind {kindRight}/{kindOf} = {Kind:P1}; slots {slotsRight}/{slotsOf} = {Slots:P1}; adjustments recalled {recalled}/{adjustments} = {AdjustmentsRecalled:P1}; false adjustments {FalseAdjustments}, without a doubt {UndoubtedFalseAdjustments}; true ones doubted {Doubted}");

    private static double Part(int of, int all) => all == 0 ? 1 : (double)of / all;

    private void Add(Labelled labelled, IReadOnlyList<Line> read, int doubted)
    {
        var pairs = Align(labelled.Lines, read);
        Phrases++;
        var exact = true;
        foreach (var (label, heard) in pairs)
        {
            kindOf++;
            kindRight += label?.Kind == heard?.Kind ? 1 : 0;
            exact &= Count(label, heard);
            if (label?.Kind != heard?.Kind)
            {
                var key = $"{label?.Kind ?? "-"} read as {heard?.Kind ?? "-"}";
                Mistakes[key] = Mistakes.GetValueOrDefault(key) + 1;
            }
        }

        var done = labelled.Lines.Count(line => line.Kind == "adjustment");
        var said = read.Count(line => line.Kind == "adjustment");
        adjustments += done;
        recalled += pairs.Count(pair => pair.Label?.Kind == "adjustment" && pair.Read?.Kind == "adjustment");
        FalseAdjustments += Math.Max(0, said - done);
        UndoubtedFalseAdjustments += Math.Max(0, said - doubted - done);
        Doubted += Math.Min(doubted, done);
        Exact += exact ? 1 : 0;
        if (!exact)
        {
            Tell(labelled, pairs);
        }
    }

    /// <summary>Counts each slot that either side has; returns whether kind and slots are all the same.</summary>
    private bool Count(Line? label, Line? read)
    {
        var names = (label?.Slots.Keys ?? []).Union(label?.Kind == read?.Kind ? read!.Slots.Keys : []).ToList();
        var right = label?.Kind == read?.Kind ? names.Count(name => label!.Slots.TryGetValue(name, out var one) && read!.Slots.TryGetValue(name, out var other) && one == other) : 0;
        slotsOf += names.Count;
        slotsRight += right;
        return label?.Kind == read?.Kind && right == names.Count;
    }

    private void Tell(Labelled labelled, IReadOnlyList<(Line? Label, Line? Read)> pairs)
    {
        differences.Append(CultureInfo.InvariantCulture, $"{labelled.Number}  {string.Concat(labelled.Before.Select(line => $"[{line}] "))}{labelled.Phrase}\n");
        foreach (var (label, read) in pairs)
        {
            differences.Append(CultureInfo.InvariantCulture, $"    {(label?.ToString() == read?.ToString() ? " " : "-")} {label?.ToString() ?? "nothing"}\n");
            if (label?.ToString() != read?.ToString())
            {
                differences.Append(CultureInfo.InvariantCulture, $"    + {read?.ToString() ?? "nothing"}\n");
            }
        }
    }

    /// <summary>Pairs labels with entries in order, so that as much as possible is the same.</summary>
    public static IReadOnlyList<(Line? Label, Line? Read)> Align(IReadOnlyList<Line> labels, IReadOnlyList<Line> read)
    {
        var best = new double[labels.Count + 1, read.Count + 1];
        for (var i = labels.Count - 1; i >= 0; i--)
        {
            for (var j = read.Count - 1; j >= 0; j--)
            {
                best[i, j] = Math.Max(Alike(labels[i], read[j]) + best[i + 1, j + 1], Math.Max(best[i + 1, j], best[i, j + 1]));
            }
        }

        List<(Line?, Line?)> pairs = [];
        int at = 0, other = 0;
        while (at < labels.Count || other < read.Count)
        {
            if (at < labels.Count && other < read.Count && best[at, other] == Alike(labels[at], read[other]) + best[at + 1, other + 1])
            {
                pairs.Add((labels[at++], read[other++]));
            }
            else if (at < labels.Count && (other == read.Count || best[at, other] == best[at + 1, other]))
            {
                pairs.Add((labels[at++], null));
            }
            else
            {
                pairs.Add((null, read[other++]));
            }
        }

        return pairs;
    }

    private static double Alike(Line label, Line read) => (label.Kind == read.Kind ? 100 : 1)
        + label.Slots.Count(slot => read.Slots.TryGetValue(slot.Key, out var value) && value == slot.Value);
}
