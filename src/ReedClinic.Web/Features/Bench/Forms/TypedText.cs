using System.Globalization;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>What was typed and ticked in a form, field by field, exactly as it came: reading it never changes it.</summary>
public sealed class TypedText
{
    private readonly Dictionary<string, string> fields;

    /// <summary>An empty form.</summary>
    public TypedText()
        : this(new Dictionary<string, string>())
    {
    }

    /// <summary>A form as it was kept.</summary>
    /// <param name="fields">The fields.</param>
    public TypedText(IReadOnlyDictionary<string, string> fields) => this.fields = new(fields, StringComparer.Ordinal);

    /// <summary>Every field that holds something.</summary>
    public IReadOnlyDictionary<string, string> Fields => fields;

    /// <summary>What stands in a field; empty when nothing does.</summary>
    /// <param name="name">The field's name.</param>
    public string this[string name]
    {
        get => fields.GetValueOrDefault(name, "");
        set
        {
            if (string.IsNullOrEmpty(value))
            {
                fields.Remove(name);
            }
            else
            {
                fields[name] = value;
            }
        }
    }

    /// <summary>True when nothing was typed.</summary>
    public bool IsEmpty => fields.Count == 0;

    /// <summary>The fields of a posted form; what was ticked several times is one list.</summary>
    /// <param name="posted">The form.</param>
    /// <returns>The same, without the antiforgery token.</returns>
    public static TypedText Of(IFormCollection posted) => new(posted
        .Where(field => !field.Key.StartsWith("__", StringComparison.Ordinal) && !string.IsNullOrEmpty(field.Value))
        .ToDictionary(field => field.Key, field => field.Value.ToString()));

    /// <summary>A name of an enum; a value that no enum has when nothing was chosen, so that the domain says what is missing.</summary>
    /// <typeparam name="T">The enum.</typeparam>
    /// <param name="name">The field's name.</param>
    public T Choice<T>(string name)
        where T : struct, Enum => Maybe<T>(name) ?? (T)Enum.ToObject(typeof(T), -1);

    /// <summary>A name of an enum, or null when nothing was chosen.</summary>
    /// <typeparam name="T">The enum.</typeparam>
    /// <param name="name">The field's name.</param>
    public T? Maybe<T>(string name)
        where T : struct, Enum =>
        this[name] is { Length: > 0 } text && !char.IsDigit(text[0]) && text[0] != '-' && Enum.TryParse<T>(text, out var value) ? value : null;

    /// <summary>An id, or null when there is none.</summary>
    /// <param name="name">The field's name.</param>
    public Guid? Id(string name) =>
        Guid.TryParse(this[name], CultureInfo.InvariantCulture, out var id) && id != Guid.Empty ? id : null;
}
