using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Letters;

/// <summary>What a letter has explained already, so that it is only named after that.</summary>
/// <param name="kinds">The kinds of finding that the beginning explains.</param>
internal sealed class LetterSoFar(IEnumerable<FindingKindId> kinds)
{
    private readonly HashSet<FindingKindId> _kinds = [.. kinds];
    private readonly HashSet<string> _said = [];

    /// <summary>Whether a kind of finding was explained.</summary>
    public bool Explained(FindingKindId kind) => _kinds.Contains(kind);

    /// <summary>Remembers that a kind of finding was explained.</summary>
    public void Explain(FindingKindId kind)
    {
        if (kind != FindingKindId.SomethingElse)
        {
            _kinds.Add(kind);
        }
    }

    /// <summary>True the first time that something is said.</summary>
    public bool Says(string what) => _said.Add(what);
}
