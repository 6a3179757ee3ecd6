using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Words;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Catalogues;

/// <summary>A part of a line, and what it is where it says one of the studio’s own names.</summary>
/// <param name="Words">As it was typed.</param>
/// <param name="Entry">The entry; null where the words are nothing of the studio’s own.</param>
public sealed record OwnPiece(string Words, BenchEntry? Entry);

/// <summary>
/// Hears the studio’s own names within what is said: whatever the tense, with “is” between, with a side and an amount around them.
/// What is planned, asked or denied is none of it.
/// </summary>
internal static class OwnHearing
{
    private static readonly HashSet<string> Between = ["the", "a", "an", "is", "are", "was", "were", "look", "looks", "feel", "feels", "seem", "seems", "its", "'s", "very", "both", "it"];

    private static readonly HashSet<string> Around = [.. Between, "on", "at", "in", "of", "off", "and", "then", "i", "we", "have", "has", "by", "now", "still", "just", "there", "here", "to", ""];

    // “Near the thread” isn’t on it.
    private static readonly HashSet<string> Beside = ["near", "towards", "toward", "above", "below", "behind", "under", "beside", "past", "before", "than"];

    private static readonly string[] Joints = [" and ", " then ", " but "];

    // Before work that wasn’t done here and now: a plan, a wish, somebody else.
    private static readonly HashSet<string> Undone = ["will", "'ll", "would", "'d", "should", "could", "shall", "might", "may", "must", "going", "gonna", "want", "wants", "need", "needs", "let", "lets", "next", "later", "tomorrow", "he", "she", "they", "who", "somebody", "student", "teacher", "perhaps", "maybe", "probably"];

    private static readonly Cat[] Unsaid = [Cat.Plan, Cat.Not, Cat.NoMore, Cat.Cond, Cat.May, Cat.Habit, Cat.Other, Cat.Risk, Cat.Leave];

    /// <summary>Takes a line apart where it says one of the names: what lies between is left as it was typed.</summary>
    /// <param name="line">The line.</param>
    /// <param name="own">What the studio offers.</param>
    /// <returns>The pieces in order, one at least; a piece without an entry says none of the names.</returns>
    internal static IReadOnlyList<OwnPiece> Pieces(string line, OwnKinds own)
    {
        List<OwnPiece> pieces = [];
        var (open, last, planned) = (-1, 0, false);
        foreach (var (start, end) in own.Findings.Count + own.Adjustments.Count == 0 || line.Contains('?', StringComparison.Ordinal) ? [] : Placed(line, [.. Clauses(line)], own))
        {
            planned = planned && start > 0 && line[start - 1] is not ('.' or ';' or '\n');
            var entry = Hear(line[start..end], own);
            if (entry is null || (planned && entry is Adjustment))
            {
                (open, last) = (open < 0 ? start : open, end);
                var tokens = Tokenizer.Cut(line[start..end]);
                planned |= IsUnsaid(tokens, []) || tokens.Exists(token => Undone.Contains(token.Text));
                continue;
            }

            Close();
            pieces.Add(new OwnPiece(line[start..end].Trim(), entry));
        }

        Close();
        return pieces.Any(piece => piece.Entry is not null) ? pieces : [new OwnPiece(line, null)];

        void Close()
        {
            if (open >= 0 && line[open..last].Trim() is { Length: > 0 } words)
            {
                pieces.Add(new OwnPiece(words, null));
            }

            open = -1;
        }
    }

    private static IEnumerable<(int Start, int End)> Clauses(string line)
    {
        var start = 0;
        for (var at = 0; at < line.Length; at++)
        {
            if (Break(line, at) is > 0 and var length)
            {
                yield return (start, at);
                start = at + length;
                at = start - 1;
            }
        }

        yield return (start, line.Length);
    }

    // “Chatter mark, upper blade, left”: a clause that is nothing but a place belongs to the name before it, or else to the one behind it.
    private static List<(int Start, int End)> Placed(string line, List<(int Start, int End)> clauses, OwnKinds own)
    {
        for (var at = 0; at < clauses.Count; at++)
        {
            var (start, end) = clauses[at];
            if (clauses.Count == 1 || !IsPlace(Tokenizer.Cut(line[start..end])))
            {
                continue;
            }

            if (at > 0 && line[clauses[at - 1].End] is not (';' or '.' or '\n') && Hear(line[clauses[at - 1].Start..clauses[at - 1].End], own) is not null)
            {
                clauses[at - 1] = (clauses[at - 1].Start, end);
                clauses.RemoveAt(at--);
            }
            else if (at + 1 < clauses.Count && line[end] is not (';' or '.' or '\n') && (at + 2 == clauses.Count || !IsPlace(Tokenizer.Cut(line[clauses[at + 1].Start..clauses[at + 1].End]))) && Hear(line[clauses[at + 1].Start..clauses[at + 1].End], own) is not null)
            {
                clauses[at + 1] = (start, clauses[at + 1].End);
                clauses.RemoveAt(at);
                at = Math.Max(-1, at - 2);
            }
        }

        return clauses;
    }

    private static bool IsPlace(List<Token> tokens)
    {
        var told = PlaceReader.Read(Without(tokens, [])).SelectMany(mention => Enumerable.Range(mention.First, mention.End - mention.First)).ToHashSet();
        return tokens.Exists(token => token.Kind is not (TokenKind.Break or TokenKind.Symbol))
            && (tokens[0].Text is not "right" || told.Count > 1 || tokens.Count(token => token.Kind is TokenKind.Word) == 1)
            && tokens.TrueForAll(token => token.Kind is TokenKind.Break or TokenKind.Symbol || token.Text is "left" or "right" || Around.Contains(token.Text) || told.Contains(tokens.IndexOf(token)))
            && (told.Count > 0 || tokens.Exists(token => token.Text is "left" or "right"));
    }

    // How long the mark or the word between two clauses is; a comma or a stop within a number is none.
    private static int Break(string line, int at)
    {
        if (line[at] is ',' or '.' or ';' or '\n')
        {
            return line[at] is ';' or '\n' || at + 1 == line.Length || !char.IsAsciiDigit(line[at + 1]) ? 1 : 0;
        }

        return Joints.FirstOrDefault(word => string.Compare(line, at, word, 0, word.Length, StringComparison.OrdinalIgnoreCase) == 0)?.Length ?? 0;
    }

    /// <summary>The longest of the names that a clause says, as an entry; null where it says none.</summary>
    /// <param name="clause">A part of a line without a stop or a comma in it.</param>
    /// <param name="own">What the studio offers.</param>
    internal static BenchEntry? Hear(string clause, OwnKinds own)
    {
        var tokens = Tokenizer.Cut(clause);
        if (tokens.Count == 0 || clause.Contains('?', StringComparison.Ordinal))
        {
            return null;
        }

        if (own.Hear(clause) is { } exact)
        {
            return exact;
        }

        var names = own.Findings.Select(kind => (kind.Name, Finding: (FindingKind?)kind, Work: (AdjustmentKind?)null))
            .Concat(own.Adjustments.Select(kind => (kind.Name, Finding: (FindingKind?)null, Work: (AdjustmentKind?)kind)))
            .OrderByDescending(one => Words(one.Name).Count).ThenByDescending(one => one.Name.Length);
        foreach (var (name, finding, work) in names)
        {
            if (Where(tokens, Words(name)) is { } said && !IsUnsaid(tokens, said))
            {
                return finding is not null ? Of(finding, clause, tokens, said) : Of(work!, clause, tokens, said);
            }
        }

        return null;
    }

    private static Finding? Of(FindingKind kind, string clause, List<Token> tokens, HashSet<int> said)
    {
        var (place, rest) = Placed(kind.Zone, tokens, said);
        var words = OwnId.Words(kind.Name, rest ? clause.Trim() : null);
        var certain = Scanner.Scan(tokens).Any(item => item.Cat is Cat.Hedge) ? Certainty.Suspected : Certainty.Certain;
        return Finding.Of(kind.Id, kind.Usually, place, kind.Shape, certainty: certain, words: words) is Outcome<Finding>.Done(var found) ? found : null;
    }

    private static Adjustment? Of(AdjustmentKind kind, string clause, List<Token> tokens, HashSet<int> said)
    {
        if (Scanner.Scan(tokens).Any(item => item.Cat is Cat.Hedge) || tokens.Exists(token => Undone.Contains(token.Text)))
        {
            return null;
        }

        var amount = AmountReader.Read(Without(tokens, said), 0, tokens.Count);
        var (place, rest) = Placed(kind.Zone, tokens, amount is { } much ? [.. said, .. Enumerable.Range(much.First, much.End - much.First)] : said);
        var words = OwnId.Words(kind.Name, rest ? clause.Trim() : null);
        return Adjustment.Of(kind.Id, place, amount is { } how ? new Amount(how.Strokes, how.Mm, how.Words) : Amount.NotSaid, words: words) is Outcome<Adjustment>.Done(var done) ? done : null;
    }

    // Zone, blade and side are read as in any phrase; whether anything else was said that the entry doesn’t tell.
    private static (Place Place, bool More) Placed(Zone zone, List<Token> tokens, HashSet<int> said)
    {
        // “Right then” names no side.
        var mentions = PlaceReader.Read(Without(tokens, said)).Where(mention => mention is not { First: 0, End: 1 } || tokens[0].Text is not "right").Where(mention => mention.First == 0 || !Beside.Contains(tokens[mention.First - 1].Text) && (mention.First == 1 || !Beside.Contains(tokens[mention.First - 2].Text))).ToList();
        var told = mentions.SelectMany(mention => Enumerable.Range(mention.First, mention.End - mention.First)).ToHashSet();
        var sides = mentions.Select(mention => mention.OneSide).OfType<Sides>().ToHashSet();
        foreach (var at in Enumerable.Range(0, tokens.Count).Where(at => tokens[at].Text is "left" || (tokens[at].Text is "right" && at > 0)).Where(at => !said.Contains(at)))
        {
            sides.Add(tokens[at].Text is "left" ? Sides.Left : Sides.Right);
            told.Add(at);
        }

        var blades = mentions.Select(mention => mention.OneBlade).OfType<Blades>().ToHashSet();
        var place = new Place(
            mentions.Find(mention => mention.HasPlace)?.Usual ?? zone,
            blades.Count == 1 ? blades.Single() : Blades.Both,
            sides.Count == 1 ? sides.Single() : Sides.Both);
        return (place, Enumerable.Range(0, tokens.Count).Any(at =>
            !said.Contains(at) && !told.Contains(at) && tokens[at].Kind is not (TokenKind.Break or TokenKind.Symbol) && !Around.Contains(tokens[at].Text)));
    }

    private static bool IsUnsaid(List<Token> tokens, HashSet<int> said) => Scanner.Scan(tokens)
        .Any(item => Unsaid.Contains(item.Cat) && !Enumerable.Range(item.First, item.Count).All(said.Contains));

    private static Segment Without(List<Token> tokens, HashSet<int> said) => new()
    {
        Tokens = tokens,
        First = 0,
        End = tokens.Count,
        Joint = "",
        Sentence = 0,
        Items = [.. Scanner.Scan(tokens).Where(item => !Enumerable.Range(item.First, item.Count).Any(said.Contains))],
    };

    // All words of the name, in any order, with nothing but small words between them.
    private static HashSet<int>? Where(List<Token> tokens, List<string> name)
    {
        for (var first = 0; first < tokens.Count && name.Count > 0; first++)
        {
            var wanted = name.ToList();
            HashSet<int> said = [];
            for (var at = first; at < tokens.Count && wanted.Count > 0; at++)
            {
                if (wanted.Remove(Stem(tokens[at].Text)))
                {
                    said.Add(at);
                }
                else if (said.Count == 0 || !Between.Contains(tokens[at].Text))
                {
                    break;
                }
            }

            if (wanted.Count == 0)
            {
                return said;
            }
        }

        return null;
    }

    private static List<string> Words(string name) =>
        [.. Tokenizer.Cut(name).Where(token => token.Kind is not (TokenKind.Break or TokenKind.Symbol) && token.Text is not ("the" or "a" or "an" or "")).Select(token => Stem(token.Text))];

    // “Gapped”, “gaps” and “gapping” are “gap”; “teased” is “tease”.
    private static string Stem(string word)
    {
        var stem = StepVerbs.Base(word);
        stem = stem.Length > 3 && stem[^1] is 's' && stem[^2] is not 's' ? stem[..^1] : stem;
        stem = stem.Length > 5 && stem.EndsWith("ing", StringComparison.Ordinal) ? stem[..^3] : stem.Length > 4 && stem.EndsWith("ed", StringComparison.Ordinal) ? stem[..^2] : stem;
        stem = stem.Length > 3 && stem[^1] is 'e' ? stem[..^1] : stem;
        return stem.Length > 3 && stem[^1] == stem[^2] ? stem[..^1] : stem;
    }
}
