using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Letters;

/// <summary>What a letter has explained already, so that it is only named after that.</summary>
/// <param name="kinds">The kinds of finding that the beginning explains.</param>
internal sealed class LetterSoFar(IEnumerable<FindingKindId> kinds)
{
    // So many are named together.
    private const int ManyReeds = 3;

    private readonly HashSet<FindingKindId> _atFirst = [.. kinds];
    private readonly HashSet<FindingKindId> _kinds = [.. kinds];
    private readonly Dictionary<FindingKindId, List<int>> _reeds = [];
    private readonly HashSet<(FindingKindId Kind, int Reed)> _sure = [];
    private readonly HashSet<string> _said = [];
    private readonly Dictionary<string, int> _first = [];

    /// <summary>The studio’s own kinds, with the sentences that explain them.</summary>
    public OwnKinds Own { get; init; } = OwnKinds.None;

    /// <summary>Whether a kind of finding was explained.</summary>
    /// <param name="kind">The kind.</param>
    public bool Explained(FindingKindId kind) => _kinds.Contains(kind);

    /// <summary>Whether the beginning of the letter has told of it, with the reeds that have it.</summary>
    /// <param name="kind">The kind.</param>
    public bool SaidAtFirst(FindingKindId kind) => _atFirst.Contains(kind);

    /// <summary>Remembers that a kind of finding was explained.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="reed">The number of the reed that had it.</param>
    /// <param name="isUnsure">Whether it was only suspected there.</param>
    public void Explain(FindingKindId kind, int reed, bool isUnsure = false)
    {
        if (!isUnsure)
        {
            _sure.Add((kind, reed));
        }

        if (kind != FindingKindId.SomethingElse)
        {
            _kinds.Add(kind);
            var reeds = _reeds.TryGetValue(kind, out var known) ? known : _reeds[kind] = [];
            if (!reeds.Contains(reed))
            {
                reeds.Add(reed);
            }
        }
    }

    /// <summary>The reeds of which a kind of finding was told, other than one, such as “reeds one and two”; null for none.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="but">The number of the reed that is told now.</param>
    /// <param name="isUnsure">Whether it is only suspected on that one: what is certain isn’t “as in” a reed on which it was suspected and no more.</param>
    public string? Earlier(FindingKindId kind, int but, bool isUnsure = false)
    {
        List<int> reeds = [.. _reeds.GetValueOrDefault(kind, []).Where(reed => reed != but && (isUnsure || _sure.Contains((kind, reed))))];
        return reeds.Count == 0 ? null : reeds.Count >= ManyReeds && reeds.Count == but - 1 ? "the reeds before it" : (reeds.Count == 1 ? "reed " : "reeds ") + Prose.List([.. reeds.TakeLast(3).Select(Prose.Number)]);
    }

    /// <summary>Whether a kind of finding was told of a reed already.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="reed">The number of the reed.</param>
    public bool ToldOf(FindingKindId kind, int reed) => _reeds.TryGetValue(kind, out var reeds) && reeds.Contains(reed);

    /// <summary>The number of the reed of which something was told first: this one when it is told now.</summary>
    /// <param name="what">What is told.</param>
    /// <param name="reed">The number of the reed that is told now.</param>
    public int FirstOf(string what, int reed) => _first.TryAdd(what, reed) ? reed : _first[what];

    /// <summary>True the first time that something is said.</summary>
    /// <param name="what">What is said.</param>
    public bool Says(string what) => _said.Add(what);

    /// <summary>Notes that it was told what a kind of finding does.</summary>
    /// <param name="kind">The kind.</param>
    public void ExplainWhatItDoes(FindingKindId kind) => _said.Add("does " + kind.Value);

    /// <summary>Whether it was told what a kind of finding does.</summary>
    /// <param name="kind">The kind.</param>
    public bool ExplainedWhatItDoes(FindingKindId kind) => _said.Contains("does " + kind.Value);

    /// <summary>Notes that a test of a reed was told: it isn’t told again in other words.</summary>
    /// <param name="test">The test.</param>
    /// <param name="reed">The number of the reed.</param>
    public void TellTest(TestKind test, int reed) => _said.Add($"test {test} of {reed}");

    /// <summary>Whether a test of a reed was told.</summary>
    /// <param name="test">The test.</param>
    /// <param name="reed">The number of the reed.</param>
    public bool ToldTest(TestKind test, int reed) => _said.Contains($"test {test} of {reed}");
}
