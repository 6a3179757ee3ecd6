using Microsoft.AspNetCore.Components;

namespace ReedClinic.Web.Shared.Forms;

/// <summary>One thing that can be chosen.</summary>
/// <param name="Value">What the form sends; empty for "I don't know".</param>
/// <param name="What">Its word.</param>
/// <param name="Means">What it means, in a sentence.</param>
/// <param name="Drawing">A small drawing beside it.</param>
public sealed record Choice(string Value, string What, string? Means = null, RenderFragment? Drawing = null);
