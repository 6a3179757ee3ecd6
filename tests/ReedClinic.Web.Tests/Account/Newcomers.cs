using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>Accounts with nothing in them, and what they sign in with.</summary>
internal static class Newcomers
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>A new account with a password.</summary>
    public static async Task<(AccountId Account, string Email)> AccountAsync(this ClinicHost host, string name, Role? role = null)
    {
        var email = ClinicHost.NewEmail(name);
        await using var scope = host.Services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
        var account = new ClinicAccount { Id = Parcel.NewOperation().Value, UserName = email, Email = email, DisplayName = name, MadeBy = Parcel.NewOperation() };
        Assert.True((await users.CreateAsync(account, ClinicHost.Password)).Succeeded);
        if (role is not null)
        {
            Assert.True((await users.AddToRoleAsync(account, role.Value.ToString())).Succeeded);
        }

        return (new AccountId(account.Id), email);
    }

    /// <summary>Gives an account a passkey that no browser could use.</summary>
    public static async Task AddPasskeyAsync(this ClinicHost host, AccountId account)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var passkey = new UserPasskeyInfo(account.Value.ToByteArray(), [1, 2, 3], TimeProvider.System.GetUtcNow(), 0, ["internal"], true, true, true, [4], [5]);
        Assert.IsType<Outcome<AccountId>.Done>(await scope.ServiceProvider.GetRequiredService<PasskeyBook>()
            .AddAsync(new Actor(account, null, false, false) { IsFresh = true }, passkey, "phone", Parcel.NewOperation(), Ct));
    }

    /// <summary>Asks for a link to begin with, and gives its path from the mail.</summary>
    public static async Task<string> BeginLinkAsync(this ClinicHost host, HttpClient visitor, string email)
    {
        using var asked = await (await Form.At(visitor, "/begin")).Set("Form.Email", email).Post();
        Assert.Equal(System.Net.HttpStatusCode.OK, asked.StatusCode);
        return await host.Mailed(email, "/begin/");
    }

    /// <summary>Lets the time pass in which nobody is asked once more who they are.</summary>
    public static async Task GrowStaleAsync(this ClinicHost host, string email)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var (db, longAgo) = (scope.ServiceProvider.GetRequiredService<ClinicDb>(), TimeProvider.System.GetUtcNow() - SessionRules.FreshFor);
        var account = new AccountId((await db.Users.SingleAsync(user => user.Email == email, Ct)).Id);
        await db.Set<Session>().Where(session => session.Account == account).ExecuteUpdateAsync(row => row.SetProperty(session => session.FreshAt, longAgo), Ct);
    }

    /// <summary>Takes the password of an account away.</summary>
    public static async Task ForgetPasswordAsync(this ClinicHost host, string email)
    {
        await using var scope = host.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<ClinicDb>().Users.Where(user => user.Email == email)
            .ExecuteUpdateAsync(row => row.SetProperty(user => user.PasswordHash, (string?)null), Ct);
    }

    /// <summary>Types the password on the sign-in page.</summary>
    public static async Task<HttpResponseMessage> SignInAsync(this HttpClient visitor, string email) =>
        await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Post();
}
