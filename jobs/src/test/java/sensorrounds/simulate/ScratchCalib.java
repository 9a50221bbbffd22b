package sensorrounds.simulate;
import java.nio.file.*;
import java.util.*;
import java.util.function.*;
import sensorrounds.outlook.*;
import sensorrounds.history.OriginBasis;
class ScratchCalib {
  public static void main(String[] a) throws Exception {
    int n=Integer.parseInt(a[0]); long seed=Long.parseLong(a[1]);
    long t0=System.currentTimeMillis();
    ReviewedFleet f=ReviewedFleet.of(seed,n,Files.createTempDirectory("cal"));
    System.out.println("ms "+(System.currentTimeMillis()-t0));
    var c=f.review().condition();
    System.out.println(c.status()+" "+c.cause()+" it "+c.iterations()+" sensors "+c.sensors()+" failures "+c.failures());
    if(c.converged()){var p=c.parameters();
      System.out.printf("weakening %.3f dying %.3f sudden %.3f wake %.3f low %.3f %.3f %.3f %.3f missed %.4f lamp %.3f %.3f %.3f share %.3f days %.1f%n",p.weakeningPerYear(0),p.dyingPerYear(0),p.suddenPerYear(),p.wakeOddsFactor(),p.low(false,false),p.low(false,true),p.low(true,false),p.low(true,true),p.missedChance(),p.warningOn(0),p.warningOn(1),p.warningOn(2),p.reportedShare(),p.daysUntilReported());}
    int[] days={30,90,180,365};
    List<ToDoubleFunction<SensorOutlook>> ps=List.of(SensorOutlook::p30,SensorOutlook::p90,SensorOutlook::p180,SensorOutlook::p365);
    Map<String,Predicate<ReviewedFleet.Forecast>> g=new LinkedHashMap<>();
    g.put("all",x->true);
    g.put("first use",x->x.outlook().basis()==OriginBasis.VEHICLE_FIRST_USE);
    g.put("recorded",x->x.outlook().basis()==OriginBasis.RECORDED_FITTING);
    g.put("unknown",x->x.outlook().basis()==OriginBasis.UNKNOWN);
    for(LastReport r:LastReport.values()) g.put(r.name(),x->x.outlook().lastReport()==r);
    for(String cl:List.of("car","van","truck","trailer")) g.put(cl,x->cl.equals(x.outlook().vehicleClass()));
    g.put("set",x->x.outlook().wheelSet()!=null);
    g.put("spare",x->x.outlook().position().isSpare());
    for(int y=0;y<12;y+=2){int yy=y;g.put(y+"y",x->x.outlook().ageDays()!=null&&x.outlook().ageDays()>=365*yy&&x.outlook().ageDays()<365*(yy+2));}
    g.put("fallback",x->x.outlook().method()!=SensorOutlook.Method.HIDDEN_CONDITION);
    for(var e:g.entrySet()){
      var m=f.forecasts().stream().filter(e.getValue()).toList();
      StringBuilder s=new StringBuilder(String.format("%-14s %6d",e.getKey(),m.size()));
      double d0=0,d1=0;long o0=0;for(var x:m){d0+=x.simpler().pNow();d1+=x.outlook().pNow();o0+=x.failsInDays()<=0?1:0;}
      s.append(String.format(" | now obs %4d exp %.1f -> %.1f",o0,d0,d1));
      for(int h=0;h<4;h++){double es=0,en=0,bs=0,bn=0,d=0,dd=0;long o=0;
        for(var x:m){int y=x.failsInDays()<=days[h]?1:0;double p=ps.get(h).applyAsDouble(x.simpler()),q=ps.get(h).applyAsDouble(x.outlook());
          es+=p;en+=q;o+=y;double u=(p-y)*(p-y),v=(q-y)*(q-y);bs+=u;bn+=v;d+=v-u;dd+=(v-u)*(v-u);}
        s.append(String.format(" | %d: o %d e %.0f->%.0f (%.2f->%.2f) B %.5f->%.5f z %.1f",days[h],o,es,en,o/es,o/en,bs/m.size(),bn/m.size(),d/Math.sqrt(dd)));}
      System.out.println(s);
    }
  }
}
