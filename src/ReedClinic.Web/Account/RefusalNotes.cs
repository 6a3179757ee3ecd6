using System.Security.Claims;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Authorization;
using ReedClinic.Data.Audit;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>
/// Notes for the audit when somebody who is signed in asks for a page of the house that isn't theirs: turned away from it,
/// or told that there is no such thing. A few a minute for each account, so that nobody can fill the audit.
/// </summary>
public static class RefusalNotes
{
    /// <summary>How many are noted in a minute for one account; the rest tell nothing new.</summary>
    public const int MostAMinute = 10;

    private static readonly PartitionedRateLimiter<string> Few = PartitionedRateLimiter.Create<string, string>(account =>
        RateLimitPartition.GetFixedWindowLimiter(account, _ => new FixedWindowRateLimiterOptions { PermitLimit = MostAMinute, Window = TimeSpan.FromMinutes(1) }));

    /// <summary>Watches how requests end. After sign-in is read, before any page is chosen.</summary>
    /// <param name="app">The application.</param>
    public static void UseRefusalNotes(this WebApplication app) => app.Use(async (context, next) =>
    {
        var guarded = context.GetEndpoint()?.Metadata.GetMetadata<IAuthorizeData>() is not null;
        await next(context).ConfigureAwait(false);
        if (guarded && context.Response.StatusCode == StatusCodes.Status404NotFound)
        {
            await NoteAsync(context).ConfigureAwait(false);
        }
    });

    /// <summary>Notes that the one who asks was refused.</summary>
    /// <param name="context">The request.</param>
    public static async Task NoteAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (Guid.TryParse(context.User.FindFirstValue(ClaimTypes.NameIdentifier), out var who))
        {
            using var lease = Few.AttemptAcquire(who.ToString());
            if (lease.IsAcquired)
            {
                await context.RequestServices.GetRequiredService<RefusalRegister>().NoteAsync(new AccountId(who), CancellationToken.None).ConfigureAwait(false);
            }
        }
    }
}
