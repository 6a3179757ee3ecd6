using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Catalogues;

/// <summary>Reads what was typed for an entry of the studio’s own, and says beside each field what can’t be taken.</summary>
/// <param name="words">What was typed.</param>
/// <param name="others">Everything else that is in the catalogue.</param>
/// <param name="standing">What a finding or a work of it is called already; nobody is asked for another name than that.</param>
internal sealed class StudioEntryReading(StudioEntryWords words, Catalogue others, string? standing = null)
{
    private readonly List<Problem> problems = [];

    internal IReadOnlyList<Problem> Problems => problems;

    /// <summary>The name and the line. What is retired may be called like something else.</summary>
    internal (string? Name, string? Line) Name(DateTimeOffset? retired)
    {
        if (words.Kind is not { } kind || !Enum.IsDefined(kind))
        {
            problems.Add(new(nameof(StudioEntry.Kind), "Choose whether it is a fault, an adjustment or a test."));
        }

        var name = Called(words.Name, nameof(StudioEntry.Name), "Give it a name.", retired is null, words.Kind != StudioEntryKind.Test);
        return (name, Sentence(words.Line, nameof(StudioEntry.Line), words.Kind == StudioEntryKind.Test
            ? "Say in one sentence how it is done."
            : "Explain it to a student in one sentence."));
    }

    /// <summary>What only some kinds have.</summary>
    internal (string? Caution, string? Right, string? Shows) More(DateTimeOffset? retired) => words.Kind switch
    {
        StudioEntryKind.Adjustment => (Sentence(words.Caution, nameof(StudioEntry.Caution), "Say in one sentence what to be careful of."), null, null),
        StudioEntryKind.Test => (
            null,
            Sentence(words.Right, nameof(StudioEntry.Right), "Say in one sentence what is right."),
            Called(words.Shows, nameof(StudioEntry.Shows), "Say what shows when it isn’t right.", retired is null, heard: true)),
        _ => (null, null, null),
    };

    /// <summary>What was chosen from the lists.</summary>
    internal void Choices()
    {
        if (words.Kind is StudioEntryKind.Fault or StudioEntryKind.Adjustment && (words.Zone is not { } zone || !Enum.IsDefined(zone)))
        {
            problems.Add(new(nameof(StudioEntry.Zone), "Choose a part of the reed."));
        }

        switch (words.Kind)
        {
            case StudioEntryKind.Fault:
                Fault();
                break;
            case StudioEntryKind.Adjustment when words.Undo is not { } undo || !Enum.IsDefined(undo):
                problems.Add(new(nameof(StudioEntry.Undo), "Say whether it can be undone."));
                break;
            case StudioEntryKind.Test:
                Among(nameof(StudioEntry.Causes), words.Causes.Select(cause => (cause.Value, others.Find(cause) is { Retired: false })), "cause");
                break;
        }
    }

    private void Fault()
    {
        if (others.Find(words.SeenBy) is not { Retired: false })
        {
            problems.Add(new(nameof(StudioEntry.SeenBy), "Choose by which test it shows."));
        }

        Among(nameof(StudioEntry.Signs), words.Signs.Select(sign => (sign.Value, others.Find(sign) is { Retired: false })), "sign");
        if (words.Steps.Count == 0)
        {
            problems.Add(new(nameof(StudioEntry.Steps), "Choose at least one thing to try against it."));
        }

        Among(nameof(StudioEntry.Steps), words.Steps.Select(step => (step.Value, others.Find(step) is { Retired: false })), "adjustment");
    }

    private void Among(string field, IEnumerable<(string Name, bool Known)> chosen, string what)
    {
        var all = chosen.ToList();
        if (all.Exists(one => !one.Known))
        {
            problems.Add(new(field, $"This {what} isn’t on the list any more: {string.Join(", ", all.Where(one => !one.Known).Select(one => $"“{one.Name}”"))}. Choose from the list."));
        }

        if (all.Count > StudioEntry.MostChosen)
        {
            problems.Add(new(field, $"Choose at most {StudioEntry.MostChosen}."));
        }
    }

    // A colon parts a name from what is remarked beside it in the log.
    private string? Called(string? typed, string field, string missing, bool alone, bool heard)
    {
        var name = Required(typed, field, StudioEntry.LongestName, missing);
        if (name?.Contains(':', StringComparison.Ordinal) == true)
        {
            problems.Add(new(field, "A name can’t have a colon in it."));
        }
        else if (name is not null && alone && others.Called(name) is { } other)
        {
            problems.Add(new(field, other.Own
                ? $"There is an entry of yours called “{other.Name}” already. Choose another name, or use that one."
                : $"“{other.Name}” comes with the program. Choose another name, or use that one."));
        }
        else if (name is not null && alone && heard && name != standing && AlreadyHeard.As(name) is { } known)
        {
            problems.Add(new(field, $"At the bench “{name}” is understood already, as {known}. Choose another name, or use that."));
        }

        return name;
    }

    private string? Sentence(string? typed, string field, string missing)
    {
        var line = Required(typed, field, StudioEntry.LongestLine - 1, missing);
        if (line is null)
        {
            return null;
        }

        var whole = char.ToUpperInvariant(line[0]) + line[1..];
        return whole[^1] is '.' or '!' or '?' ? whole.TrimEnd('!', '?', '.') + "." : whole + ".";
    }

    private string? Required(string? typed, string field, int longest, string missing)
    {
        var before = problems.Count;
        var text = PlainText.Read(typed, field, longest, problems);
        if (text is null && problems.Count == before)
        {
            problems.Add(new(field, missing));
        }

        return text;
    }
}
