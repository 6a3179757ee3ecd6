namespace ReedClinic.Web.Shared.Writes;

/// <summary>A form that came too early: it is handed back with the answer, so that nothing typed in it is lost.</summary>
/// <param name="Action">Where it was sent.</param>
/// <param name="Fields">What stood in it.</param>
public sealed record HeldForm(string Action, IReadOnlyList<KeyValuePair<string, string>> Fields)
{
    /// <summary>Holds what was posted, unless it has something in it that can't or mustn't be written into a page.</summary>
    /// <param name="request">The request.</param>
    /// <param name="token">The name of the field with the form's token; a new one is made.</param>
    /// <returns>Null when it can't be held.</returns>
    public static async Task<HeldForm?> OfAsync(HttpRequest request, string token)
    {
        ArgumentNullException.ThrowIfNull(request);
        var form = await request.ReadFormAsync(request.HttpContext.RequestAborted).ConfigureAwait(false);
        return form.Files.Count > 0 || form.Keys.Any(name => name.Contains("Password", StringComparison.OrdinalIgnoreCase))
            ? null
            : new HeldForm(
                request.PathBase + request.Path + request.QueryString,
                [.. form.Where(field => field.Key != token)
                    .SelectMany(field => field.Value.Select(value => KeyValuePair.Create(field.Key, value ?? "")))]);
    }
}
