using System.Globalization;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.Extensions.Options;
using ReedClinic.Web.Account;

namespace ReedClinic.Web.Shared.Writes;

/// <summary>Lets a signed-in person's plain forms through as long as their <see cref="WriteBudget"/> lasts.</summary>
public static class WriteGate
{
    // Leaving must always be possible.
    private const string SignOut = "/account/sign-out";

    /// <summary>Registers the budget.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddWriteBudget(this WebApplicationBuilder builder)
    {
        builder.Services.AddOptions<WriteAllowance>().Bind(builder.Configuration.GetSection(WriteAllowance.Section))
            .Validate(allowance => allowance.IsSound, $"{WriteAllowance.Section}: at least one write at once, and some each second.")
            .ValidateOnStart();
        builder.Services.AddSingleton<WriteBudget>();
    }

    /// <summary>Stands after the check of a form's token, so that nobody else's page can use a budget up.</summary>
    /// <param name="app">The application.</param>
    public static void UseWriteBudget(this WebApplication app) => app.Use(CountAsync);

    private static async Task CountAsync(HttpContext context, RequestDelegate next)
    {
        var isForm = context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: true } && !context.Request.Path.StartsWithSegments(SignOut, StringComparison.Ordinal);
        var budget = context.RequestServices.GetRequiredService<WriteBudget>();
        if (!isForm || context.User.Account() is not { } account || budget.TryTake(account))
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        var token = context.RequestServices.GetRequiredService<IOptions<AntiforgeryOptions>>().Value.FormFieldName;
        context.Features.Set(await HeldForm.OfAsync(context.Request, token).ConfigureAwait(false));
        context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        context.Response.Headers.RetryAfter = Math.Ceiling(budget.UntilNext(account).TotalSeconds).ToString(CultureInfo.InvariantCulture);
    }
}
