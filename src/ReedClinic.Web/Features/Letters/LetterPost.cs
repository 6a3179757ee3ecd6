using System.Security.Cryptography;
using System.Text;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Letters;

/// <summary>What the page of a letter posted, as text: the blocks, what mends a gap, and what sends.</summary>
/// <param name="Fields">Every field by its name.</param>
public sealed record LetterPost(IReadOnlyDictionary<string, string> Fields)
{
    private const string Block = "Block.";
    private const string Shown = "Shown.";
    private static readonly string[] GapFields = ["Answer", "Verdict", "Reason"];

    /// <summary>Nothing was posted.</summary>
    public static LetterPost Nothing { get; } = new(new Dictionary<string, string>());

    /// <summary>The texts that were changed, by the keys of their blocks. What was only shown keeps following the log.</summary>
    public IReadOnlyDictionary<string, string> Texts => Fields
        .Where(pair => pair.Key.StartsWith(Block, StringComparison.Ordinal))
        .Select(pair => (Key: pair.Key[Block.Length..], pair.Value))
        .Where(block => this[Shown + block.Key] != MarkOf(block.Value))
        .ToDictionary(block => block.Key, block => block.Value);

    /// <summary>The version that the form was opened on.</summary>
    public Guid Version => Guid.TryParse(this["Version"], out var version) ? version : Guid.Empty;

    /// <summary>The operation that the form carried; empty when it brought none.</summary>
    public OperationId Operation => new(Guid.TryParse(this["Operation"], out var id) ? id : Guid.Empty);

    /// <summary>Whether the button that sends was pressed.</summary>
    public bool Sends => this["Step"] == "send";

    /// <summary>Whether the letter is to be shown as it will be read.</summary>
    public bool Looks => this["Step"] == "see";

    /// <summary>What was filled in for gaps, by the names of the fields.</summary>
    public IReadOnlyDictionary<string, string> Filled => Fields
        .Where(pair => GapFields.Any(what => pair.Key.StartsWith(what + ".", StringComparison.Ordinal)) && !string.IsNullOrWhiteSpace(pair.Value))
        .ToDictionary(pair => pair.Key, pair => pair.Value);

    /// <summary>What was said that a correction puts right; null when it wasn't asked.</summary>
    public string? WhatChanged => this[nameof(WhatChanged)];

    /// <summary>Whether that sentence was changed by whoever posted the form.</summary>
    public bool SaysAnew => WhatChanged is { } said && (this[ShownField(nameof(WhatChanged))] ?? MarkOf("")) != MarkOf(said);

    /// <summary>The mark of the letter that was looked at.</summary>
    public string Mark => this["Mark"] ?? "";

    /// <summary>Whether it was said that the letter was read through.</summary>
    public bool ReadThrough => this["ReadThrough"] is { Length: > 0 };

    /// <summary>What was typed in a field; null when it wasn't posted.</summary>
    /// <param name="field">The field's name.</param>
    public string? this[string field] => Fields.GetValueOrDefault(field);

    /// <summary>Reads a posted form.</summary>
    /// <param name="form">The form.</param>
    public static LetterPost Of(IFormCollection form) =>
        new(form.ToDictionary(field => field.Key, field => field.Value.ToString()));

    /// <summary>The name of a block's field.</summary>
    /// <param name="key">The block's key.</param>
    public static string BlockField(string key) => Block + key;

    /// <summary>The name of the field with the mark of what a block showed.</summary>
    /// <param name="key">The block's key.</param>
    public static string ShownField(string key) => Shown + key;

    /// <summary>A short mark of a text, whatever its line endings.</summary>
    /// <param name="text">The text.</param>
    public static string MarkOf(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n").Trim())))[..16];
    }

    /// <summary>Whether that sentence stood in the form as it was shown.</summary>
    /// <param name="stands">The sentence.</param>
    public bool ShowedWhatChanged(string stands) => this[ShownField(nameof(WhatChanged))] == MarkOf(stands);

    /// <summary>The field that a problem belongs to, as the form spells it.</summary>
    /// <param name="field">The field as the operation named it.</param>
    public string FieldOf(string field) => Fields.ContainsKey(Block + field) ? Block + field : field;

    /// <summary>
    /// The operation of one part of what was posted. It depends on what was typed: the same form again repeats nothing, and
    /// another text in an old form isn't taken for a repetition.
    /// </summary>
    /// <param name="what">Which part.</param>
    /// <param name="typed">What was typed there.</param>
    public OperationId OperationFor(string what, string typed) => Operation == default
        ? default
        : new(new Guid(SHA256.HashData(Encoding.UTF8.GetBytes($"{Operation.Value:N}\n{what}\n{typed}")).AsSpan(0, 16)));

    /// <summary>The first of the changed parts that somebody else changed too; where there is none, the first that was changed here.</summary>
    /// <param name="now">The parts of the letter as it stands.</param>
    public string FirstClashIn(IReadOnlyList<LetterBlock> now)
    {
        ArgumentNullException.ThrowIfNull(now);
        var changed = Texts.Keys.ToList();
        return changed.Find(key => this[ShownField(key)] != MarkOf(now.FirstOrDefault(block => block.Key == key)?.Text ?? "")) ?? changed[0];
    }

    /// <summary>The operation of the changed words.</summary>
    public OperationId OperationForTexts() => OperationFor(
        "words", string.Join('\n', Texts.OrderBy(text => text.Key, StringComparer.Ordinal).Select(text => $"{text.Key}\n{text.Value}")));

    /// <summary>The same with more words at the end of one part.</summary>
    /// <param name="part">The part as it stands.</param>
    /// <param name="words">The words.</param>
    public LetterPost AtTheEndOf(LetterBlock part, string words)
    {
        ArgumentNullException.ThrowIfNull(part);
        var field = BlockField(part.Key);
        return new(new Dictionary<string, string>(Fields) { [field] = $"{(this[field] ?? part.Text).TrimEnd()}\n\n{words}" });
    }

    /// <summary>What is left to show again: without what was kept, and without what belongs to one showing of the page.</summary>
    /// <param name="wordsKept">Whether the changed words were kept.</param>
    /// <param name="settled">The gap fields that were kept.</param>
    public LetterPost Left(bool wordsKept, IReadOnlySet<string> settled) => new(Fields
        .Where(field => field.Key is not ("Version" or "Operation" or "Mark" or "ReadThrough" or "Step" or "Anew"))
        .Where(field => !field.Key.StartsWith("Reopen.", StringComparison.Ordinal) && !settled.Contains(field.Key))
        .Where(field => !wordsKept || !(field.Key.StartsWith(Block, StringComparison.Ordinal) || field.Key.StartsWith(Shown, StringComparison.Ordinal)))
        .ToDictionary(field => field.Key, field => field.Value));
}
