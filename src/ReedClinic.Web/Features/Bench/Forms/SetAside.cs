using ReedClinic.Domain.Bench;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>What was half typed for other kinds of entry, or for other corrections, while something else is open.</summary>
public sealed class SetAside
{
    private readonly List<EntryForm> forms = [];

    /// <summary>The form that was put here last, or null.</summary>
    public EntryForm? Last => forms.LastOrDefault();

    /// <summary>Keeps a form until it is wanted again.</summary>
    /// <param name="form">The form.</param>
    public void Put(EntryForm form) => forms.Add(form);

    /// <summary>Gives a form back.</summary>
    /// <param name="kind">The kind of entry.</param>
    /// <param name="seen">What it corrects; null for something new.</param>
    /// <returns>The form, or null when none was kept.</returns>
    public EntryForm? Take(EntryKind kind, EntryId? seen)
    {
        var form = forms.Find(one => one.Kind == kind && one.Seen == seen);
        if (form is not null)
        {
            forms.Remove(form);
        }

        return form;
    }
}
