using System.Security.Cryptography;
using System.Text;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Letters;

/// <summary>What the page of a letter posted, as text: the blocks, what mends a gap, and what sends.</summary>
/// <param name="Fields">Every field by its name.</param>
public sealed record LetterPost(IReadOnlyDictionary<string, string> Fields)
{
    private const string Block = "Block.";
    private const string Shown = "Shown.";

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

    /// <summary>The field that a problem belongs to, as the form spells it.</summary>
    /// <param name="field">The field as the operation named it.</param>
    public string FieldOf(string field) => Fields.ContainsKey(Block + field) ? Block + field : field;

    /// <summary>The same without version and operation, so that the page puts in the ones that stand.</summary>
    public LetterPost Afresh() => new(Fields
        .Where(field => field.Key is not ("Version" or "Operation" or "Mark" or "ReadThrough"))
        .ToDictionary(field => field.Key, field => field.Value));
}
