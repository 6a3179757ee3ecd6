using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.Bench.Fields;

/// <summary>What the fields of the open form share.</summary>
/// <param name="Form">The form.</param>
/// <param name="Problems">What was wrong with it.</param>
/// <param name="Changed">Called with the field's name after something was typed or chosen.</param>
public sealed record EntryEditing(EntryForm Form, ProblemList Problems, Func<string, Task> Changed)
{
    /// <summary>What stands in a field.</summary>
    /// <param name="name">The field's name.</param>
    public string this[string name] => Form.Typed[name];

    /// <summary>Puts something into a field.</summary>
    /// <param name="name">The field's name.</param>
    /// <param name="value">What was typed or chosen.</param>
    public Task Type(string name, object? value)
    {
        Form.Typed[name] = value?.ToString() ?? "";
        return Changed(name);
    }
}
